using System.Diagnostics.CodeAnalysis;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Licks.Tab.Writing;
using TheoryKit.Paths;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Licks.Tab;

/// <summary>Tab as players type it: read into a path, and written so that it reads back to the same path.</summary>
/// <remarks>
/// <para>
/// Lines. A line for each string, string 1 on top, three to twelve of them one below the other; before it the name of the string, its
/// pitch, its number or nothing; then numbers and signs on a line of -, = or spaces (or the dashes and box lines of typesetting) between
/// bars. More such blocks follow each other in time. Directly above a block may stand chords, numbers of bars, accents (&gt;), dots, waves
/// (~~~), <c>PM---|</c> and <c>let ring---|</c>, a count or a rhythm; directly below it a count or a rhythm, rows that end with
/// <c>fingers</c> or <c>notes</c> (and a number for the second, third, … of the notes struck together, from string 1 on), and rows of
/// functions or names, which are passed over. Everything else is words.
/// </para>
/// <code>
/// 7          fret 7              7b9        bent as far as fret 9       7/9   7\5   slid from number to number
/// 5h7  7p5   hammered, pulled    7b7.5      by a quarter tone           s9          slid from wherever it was
/// x          dead, open          7b  7bfull by a whole tone             /7    \7    slid into from below, above
/// x(5)       dead, at fret 5     7b1/2      by half of a whole tone     7\    7/    slid away down, up
/// (7)        ghost note          7b9r7      bent, then let go: 2 notes  //7   \\7   slid into, after a held note
/// &lt;12&gt;       natural harmonic    7b9r8      let go down to fret 8       t12         tapped
/// [7]        artificial one      7pb9       bent before the stroke      7tr9        trill with fret 9
/// 7~         vibrato             7^9        as 7b9                      7==== held as long as the line of =
/// 7&gt;  7.  7m  accent, staccato, palm mute of one of the notes struck together
/// </code>
/// <para>
/// Time. A count names the beats; between them <c>&amp;</c> is the half, <c>e</c> and <c>a</c> the quarters (&amp; and a are thirds where they stand
/// so), <c>.</c> any other moment, by its place. A rhythm has a value for each moment: w h q e s t x for a whole note down to a 64th,
/// dots, the number of a tuplet (<c>e3</c>), + for a tie, or beats in parentheses (<c>(5/7)</c>). <c>r</c> (before a value: <c>rq</c>) is
/// where a rest begins, <c>end</c> where the path ends within its bar. A note lasts until the next number on any string or r, over bar
/// lines, unless a line of = holds it.
/// </para>
/// <para>What can be read in more than one way is read by these rules, and each time a remark tells of it:</para>
/// <list type="table">
/// <item><term>two digits</term><description>One number as far as the neck goes (24 frets where none is given); beyond, two.</description></item>
/// <item><term>no count, no rhythm</term><description>The spacing is the time where all numbers of a bar come out at quarters or all at thirds
/// of beats: beat 1 stands where the earliest number of any bar does, and the bar line where the next bar begins. Two-digit numbers may count
/// as one character. Otherwise the numbers are equal notes, each <see cref="TabReadOptions.Even"/> long, shorter (1/3, 1/4, 1/6, 1/8)
/// where a bar of several holds more; a single bar goes on as long as it takes. A note ends with its bar.</description></item>
/// <item><term>a bar too full or not full</term><description>It goes on into further whole bars, or ends with a rest; no note is left out.</description></item>
/// <item><term>a number between two counts</term><description>The nearest twelfth of a beat.</description></item>
/// <item><term>numbers one character beside each other</term><description>Struck together where the first has two digits or a bracket.</description></item>
/// <item><term>a bend without a target, or with a lower one</term><description>A whole tone; so many frets.</description></item>
/// <item><term>what can't be played</term><description>A bend of an open string or beyond 6 frets, a release of nothing bent, a harmonic
/// at no node, a trill with its own fret: the plain note.</description></item>
/// <item><term>a hammer-on to no higher fret, a pull-off to no lower one</term><description>Left as typed.</description></item>
/// <item><term>a sign of a slide beside a gap</term><description>Without a count, to or from the number next to it on the string if it fits its
/// direction; else from or to nowhere.</description></item>
/// <item><term>frets below the capo</term><description>All numbers are counted from the capo; else from the nut.</description></item>
/// <item><term>names of some strings of a guitar in a row</term><description>Those strings of standard tuning, where they are no usual
/// tuning by themselves.</description></item>
/// <item><term>no names, or unusual ones</term><description>The first usual tuning of so many strings, turned to the names.</description></item>
/// <item><term>names that fit only from below</term><description>The lines are read upside down.</description></item>
/// <item><term>repeats (|: :|, x3, (x3))</term><description>Written out, up to 16 times; x3 without signs repeats its line.</description></item>
/// <item><term>bar lines not below each other</term><description>Bar by bar; where their numbers differ, those that most strings have.</description></item>
/// <item><term>chords above</term><description>The changes where none are given; those that are given count. Without a count one may stand a
/// character beyond its note.</description></item>
/// </list>
/// </remarks>
public static class PlainTab
{
    internal const string What = "tab";

    /// <summary>Reads tab.</summary>
    /// <param name="text">The text.</param>
    /// <param name="options">What the text does not say.</param>
    /// <exception cref="PlacedFormatException">It is not tab; the message shows the line with a caret and says what would have worked.</exception>
    /// <exception cref="ArgumentException">The time of the options is not that of their changes.</exception>
    public static TabReading Read(string text, TabReadOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (options is { Time: { } time, Changes: { } changes } && changes.Time != time)
        {
            throw new ArgumentException(
                $"The tab is to be read in {time}, its changes are in {changes.Time}.",
                nameof(options)
            );
        }

        return TabReader.Read(text, options ?? new());
    }

    /// <summary>Reads tab, or says that it is none.</summary>
    public static bool TryRead(
        [NotNullWhen(true)] string? text,
        TabReadOptions? options,
        [NotNullWhen(true)] out TabReading? reading
    )
    {
        reading = null;
        if (text is null)
        {
            return false;
        }

        try
        {
            reading = Read(text, options);
            return true;
        }
        catch (PlacedFormatException)
        {
            return false;
        }
    }

    /// <summary>The path as tab that reads back to it, given its neck, time and changes.</summary>
    public static string Write(Path path, TabWriteOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        return TabWriter.Write(path, options ?? new());
    }

    /// <summary>A note as it is typed on its string: what stands before its moment (<c>h</c>, <c>/</c>), and the number and signs from it on.</summary>
    /// <param name="neck">The neck.</param>
    /// <param name="note">The note.</param>
    /// <param name="before">The note that sounds on its string up to its start; null for none.</param>
    public static (string Lead, string Sign) Typed(Neck neck, PathNote note, PathNote? before = null)
    {
        ArgumentNullException.ThrowIfNull(neck);
        ArgumentNullException.ThrowIfNull(note);
        return TabNoteText.Of(neck, note, before, AboveSigns.None, saysAll: false);
    }
}

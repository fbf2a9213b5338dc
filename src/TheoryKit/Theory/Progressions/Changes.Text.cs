using System.Diagnostics.CodeAnalysis;
using System.Text;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Theory.Progressions;

public sealed partial class Changes : ISpanParsable<Changes>, IFormattable
{
    internal const string What = "changes";
    internal const string NoChord = "N.C.";

    private const string ExpectedInBar = "a chord, a roman numeral, N.C. or % (the bar before)";

    /// <summary>The changes as <see cref="Parse(string, IFormatProvider?)"/> reads them.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>
    /// The changes in their canonical text: "G" (or null) plain, "P" printed; note names in the language of a
    /// <see cref="NoteNaming"/>. Repeats are written out, a bar like the one before is <c>%</c>, 4/4 goes without saying.
    /// </summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null) =>
        Write(format, formatProvider, Key, chord => chord.ToString(format, formatProvider));

    /// <summary>
    /// The changes as roman numerals, the key in front: <c>3/4, Eb major: Imaj7 | vi7 | ii7 | V7</c>.
    /// <see cref="Parse(string, IFormatProvider?)"/> gives the chords back.
    /// </summary>
    /// <param name="key">The key to count in; the key of the changes if null.</param>
    /// <param name="format">"G" (or null) plain, "P" printed.</param>
    /// <param name="formatProvider">A <see cref="NoteNaming"/> for the key.</param>
    /// <exception cref="InvalidOperationException">No key is given and the changes have none.</exception>
    /// <exception cref="OverflowException">A numeral would need more than <see cref="Degree.MaxAlteration"/> accidentals.</exception>
    /// <exception cref="FormatException">Another format than "G" or "P".</exception>
    public string ToRoman(Key? key = null, string? format = null, IFormatProvider? formatProvider = null)
    {
        var counted = key ?? Key ?? throw new InvalidOperationException(NoKey);
        return Write(format, formatProvider, counted, chord => RomanNumeral.For(chord, counted).ToString(format));
    }

    /// <summary>The changes that roman numerals mean in a key: <c>ii7 | V7 | Imaj7</c>.</summary>
    /// <param name="text">The text; a key or time signature of its own in front wins.</param>
    /// <param name="key">The key.</param>
    /// <param name="time">The time signature.</param>
    /// <exception cref="FormatException">The text is not changes; the message says where and what would have worked.</exception>
    public static Changes FromRoman(string text, Key key, TimeSignature time = default)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Parsing.Parse<Changes>(
            text,
            What,
            (ref TextCursor cursor, [MaybeNullWhen(false)] out Changes changes) =>
                Read(ref cursor, time, key, out changes)
        );
    }

    /// <summary>Reads changes.</summary>
    /// <param name="s">The text.</param>
    /// <param name="provider">A <see cref="NoteNaming"/> for note names other than English ones.</param>
    /// <exception cref="FormatException">The text is not changes; the message says where and what would have worked.</exception>
    /// <remarks>
    /// <code>
    /// changes = [ header ":" ] [ line ] bar { line bar } [ line ] ;
    /// header  = time signature | key | time signature "," key | key "," time signature ;
    /// line    = "|" | "||" | "|:" | ":|" | ":|:" | ":||:" | a new line ;
    /// bar     = "%" | item { item | "/" } ;
    /// item    = chord | roman numeral | "N.C." ;
    /// </code>
    /// <para>
    /// Without a header the time is 4/4 and there is no key: <c>3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7</c>. Roman numerals
    /// need a key and stand for its chords, <c>Eb major: ii7 | V7 | Imaj7</c>; they may be mixed with chords.
    /// </para>
    /// <para>
    /// Chords and slashes share the bar evenly, and a slash lengthens the chord before it: <c>Fm7 Bb7</c> is half a bar each,
    /// <c>Fm7 / Bb7</c> in 3/4 is two beats and one. So that a forgotten slash is noticed, a bar with slashes has one chord or
    /// slash for every beat, or for every two, three or more beats that divide the bar, or two, three or more for every beat.
    /// <c>%</c> is the bar before once more, <c>N.C.</c> (also <c>NC</c>) no chord.
    /// </para>
    /// <para>
    /// What stands between <c>|:</c> and <c>:|</c> is played twice; without <c>|:</c> from the last <c>:|</c> or the beginning.
    /// Repeats are written out on reading. A new line ends a bar like a bar line.
    /// </para>
    /// </remarks>
    public static partial Changes Parse(string s, IFormatProvider? provider = null);

    private string Write(string? format, IFormatProvider? provider, Key? key, Func<Chord, string> write)
    {
        // Also where nothing below asks: no key, no chords.
        _ = TextFormat.IsPrinted(format);
        var text = new StringBuilder();
        text.Append(Time == default ? "" : Time.ToString());
        if (key is { } named)
        {
            text.Append(text.Length > 0 ? ", " : "").Append(named.ToString(format, provider));
        }

        text.Append(text.Length > 0 ? ": " : "");
        for (var index = 0; index < bars.Length; index++)
        {
            text.Append(index > 0 ? " | " : "");
            if (index > 0 && bars[index] == bars[index - 1])
            {
                text.Append('%');
            }
            else
            {
                bars[index].Write(text, write);
            }
        }

        return text.ToString();
    }

    private static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Changes changes) =>
        Read(ref cursor, default, null, out changes);

    private static bool Read(
        ref TextCursor cursor,
        TimeSignature time,
        Key? key,
        [MaybeNullWhen(false)] out Changes changes
    )
    {
        changes = null;
        if (!ReadHeader(ref cursor, ref time, ref key))
        {
            return false;
        }

        var bars = new List<Bar>();
        var (repeatFrom, opened) = (0, -1);
        var line = TakeLine(ref cursor);
        while (true)
        {
            if (line.Begins >= 0)
            {
                if (opened >= 0)
                {
                    return cursor.Fail(line.Begins, "the end of a repeat, :|, before another one begins");
                }

                (repeatFrom, opened) = (bars.Count, line.Begins);
            }

            if (cursor.AtEnd && bars.Count > 0)
            {
                break;
            }

            if (!ReadBar(ref cursor, time, key, bars.Count > 0 ? bars[^1] : null, out var bar))
            {
                return false;
            }

            bars.Add(bar);
            line = TakeLine(ref cursor);
            if (line.Ends)
            {
                bars.AddRange(bars[repeatFrom..]);
                (repeatFrom, opened) = (bars.Count, -1);
            }
        }

        if (opened >= 0)
        {
            return cursor.Fail($"the end of the repeat, :|, that begins at position {opened + 1}");
        }

        changes = new(bars, time, key);
        return true;
    }

    /// <summary>Reads time signature and key if the text begins with them: if a colon comes first that is no repeat sign.</summary>
    private static bool ReadHeader(ref TextCursor cursor, ref TimeSignature time, ref Key? key)
    {
        var colon = cursor.Text.IndexOfAny(":|");
        if (colon < 0 || cursor.Text[colon..] is ['|', ..] or [':', '|', ..])
        {
            return true;
        }

        var (timed, keyed) = (false, false);
        do
        {
            cursor.SkipSpaces();
            if (char.IsAsciiDigit(cursor.Current) ? timed : keyed)
            {
                return cursor.Fail("one time signature and one key before the colon (as in \"3/4, Eb major:\")");
            }

            if (char.IsAsciiDigit(cursor.Current))
            {
                timed = true;
                if (!TimeSignature.Read(ref cursor, out time))
                {
                    return false;
                }
            }
            else
            {
                keyed = true;
                if (!TheoryKit.Theory.Scales.Key.Read(ref cursor, out var named))
                {
                    return false;
                }

                key = named;
            }

            cursor.SkipSpaces();
        } while (cursor.Take(','));

        return cursor.Take(':') || cursor.Fail("a colon after time signature and key (as in \"3/4, Eb major:\")");
    }

    /// <summary>
    /// Steps over what stands between bars: space, bar lines and repeat signs, a new line with or without them. Says whether
    /// a repeat ends there and where the next begins (-1 for nowhere).
    /// </summary>
    private static (bool Ends, int Begins) TakeLine(ref TextCursor cursor)
    {
        var newLine = SkipSpaces(ref cursor);
        var (ends, begins) = (cursor.Take(":|"), -1);
        if (!ends && !cursor.Take('|') && !newLine)
        {
            return (false, -1);
        }

        cursor.Take('|');
        if (!TakeBegin(ref cursor, ":", ref begins))
        {
            // The next line of the text may begin with a bar line; a repeat may begin right after a line.
            newLine |= SkipSpaces(ref cursor);
            if (
                !TakeBegin(ref cursor, "|:", ref begins)
                && !TakeBegin(ref cursor, "||:", ref begins)
                && newLine
                && cursor.Take('|')
            )
            {
                cursor.Take('|');
            }
        }

        SkipSpaces(ref cursor);
        return (ends, begins);

        static bool TakeBegin(ref TextCursor cursor, ReadOnlySpan<char> sign, ref int begins)
        {
            if (!cursor.Take(sign))
            {
                return false;
            }

            begins = cursor.Position - "|:".Length;
            return true;
        }
    }

    /// <summary>Steps over white space; whether a new line was in it.</summary>
    private static bool SkipSpaces(ref TextCursor cursor)
    {
        var start = cursor.Position;
        cursor.SkipSpaces();
        return cursor.Text[start..cursor.Position].ContainsAny('\n', '\r');
    }

    private static bool ReadBar(
        ref TextCursor cursor,
        TimeSignature time,
        Key? key,
        Bar? before,
        [MaybeNullWhen(false)] out Bar bar
    )
    {
        bar = before;
        var start = cursor.Position;
        if (cursor.Take('%'))
        {
            cursor.SkipSpacesInLine();
            return before is null
                ? cursor.Fail(start, "a chord: % needs a bar before it")
                : AtLine(cursor) || cursor.Fail("a bar line after %");
        }

        var items = new List<(Chord? Chord, int Parts)>();
        var (parts, slashes) = (0, false);
        while (!AtLine(cursor))
        {
            if (++parts > Bar.MaxParts)
            {
                return cursor.Fail($"a bar line after at most {Bar.MaxParts} chords and slashes");
            }

            if (items.Count > 0 && cursor.Take('/'))
            {
                slashes = true;
                items[^1] = (items[^1].Chord, items[^1].Parts + 1);
            }
            else if (ReadItem(ref cursor, key, out var chord))
            {
                items.Add((chord, 1));
            }
            else
            {
                return false;
            }

            cursor.SkipSpacesInLine();
        }

        if (parts == 0)
        {
            return cursor.Fail(ExpectedInBar);
        }

        if (slashes && time.Beats % parts != 0 && parts % time.Beats != 0)
        {
            return cursor.Fail(
                start,
                $"a chord or a slash for each of the {time.Beats} beats in {time}, not {parts} of them"
            );
        }

        bar = Bar.OfParts(time.Beats, parts, items);
        return true;
    }

    private static bool ReadItem(ref TextCursor cursor, Key? key, out Chord? chord)
    {
        chord = null;
        if (cursor.Take(NoChord) || cursor.Take("NC"))
        {
            return AtWordEnd(cursor) || cursor.Fail("a space or a bar line after N.C.");
        }

        if (cursor.Current == '/')
        {
            return cursor.Fail("a chord before the slash that lengthens it");
        }

        if (cursor.Current is '%')
        {
            return cursor.Fail("a chord: % stands alone in its bar");
        }

        if (!RomanNumeral.Begins(cursor.Rest))
        {
            if (!cursor.Naming().TryRead(cursor.Rest, out _, out _))
            {
                return cursor.Fail(ExpectedInBar);
            }

            return cursor.Within(ItemEnd(cursor), Chord.Read, "the end of the chord", out chord);
        }

        var start = cursor.Position;
        if (!cursor.Within<RomanNumeral>(ItemEnd(cursor), RomanNumeral.Read, "the end of the numeral", out var numeral))
        {
            return false;
        }

        if (key is not { } counted)
        {
            return cursor.Fail(start, "a chord; roman numerals need a key in front (as in \"Eb major: ii7 | V7\")");
        }

        try
        {
            chord = numeral.In(counted);
            return true;
        }
        catch (OverflowException)
        {
            return cursor.Fail(start, $"a numeral whose notes in {counted} need fewer accidentals");
        }
    }

    /// <summary>Where a chord ends: at white space outside brackets, at a bar line, or with the text.</summary>
    private static int ItemEnd(in TextCursor cursor)
    {
        var depth = 0;
        for (var index = cursor.Position; index < cursor.Text.Length; index++)
        {
            var c = cursor.Text[index];
            depth += c switch
            {
                '(' or '[' => 1,
                ')' or ']' => -1,
                _ => 0,
            };
            if (c is '|' or '\n' or '\r' || (depth <= 0 && char.IsWhiteSpace(c)) || IsRepeat(cursor.Text[index..]))
            {
                return index;
            }
        }

        return cursor.Text.Length;
    }

    private static bool IsRepeat(ReadOnlySpan<char> text) => text is [':', '|', ..];

    private static bool AtLine(in TextCursor cursor) =>
        cursor.AtEnd || cursor.Current is '|' or '\n' or '\r' || IsRepeat(cursor.Rest);

    private static bool AtWordEnd(in TextCursor cursor) => AtLine(cursor) || char.IsWhiteSpace(cursor.Current);
}

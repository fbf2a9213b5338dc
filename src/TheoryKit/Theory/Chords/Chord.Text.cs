using System.Diagnostics.CodeAnalysis;
using System.Text;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Chords;

public sealed partial class Chord : ISpanParsable<Chord>, IFormattable
{
    /// <summary>The known quality with this formula, or null.</summary>
    public ChordQuality? Quality => ChordQuality.Find(Formula);

    /// <summary>
    /// What is written between the root and the slash: <c>m7b5</c>, empty for a major triad; null if the formula has no
    /// symbol that a player would recognise (see <see cref="ChordSymbol"/>).
    /// </summary>
    public string? Symbol => ChordSymbol.For(Formula);

    /// <summary>The chord in its canonical spelling, which <see cref="Parse(string, IFormatProvider?)"/> reads back.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>
    /// The chord in its canonical spelling: "G" (or null) plain, <c>Bbm7b5</c>; "P" printed, <c>B♭ø7</c>. The note names are
    /// those of a <see cref="NoteNaming"/>.
    /// </summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        var printed = TextFormat.IsPrinted(format);
        var naming = NoteNaming.Of(formatProvider);
        var text = new StringBuilder(16);
        Root.Write(text, printed, naming);
        var symbol = ChordSymbol.For(Formula, format);
        _ = symbol is null ? text.Append('[').Append(Formula.ToString(format)).Append(']') : text.Append(symbol);
        if (Bass != Root)
        {
            Bass.Write(text.Append('/'), printed, naming);
        }

        return text.ToString();
    }

    /// <summary>Reads a chord as players write it.</summary>
    /// <param name="s">The text.</param>
    /// <param name="provider">A <see cref="NoteNaming"/> for note names other than English ones.</param>
    /// <exception cref="FormatException">The text is not a chord; the message says where and what would have worked.</exception>
    /// <remarks>
    /// <para>The grammar. Words may be written in upper or lower case, but not <c>m</c> and <c>M</c>.</para>
    /// <code>
    /// chord     = root ( symbol | "[" formula "]" ) [ "/" bass ] ;
    /// root      = note name ;                      (* see NoteName; the longest that leaves a chord *)
    /// bass      = note name ;
    /// symbol    = [ stem ] [ number ] { [ part ] tone | "(" tone { [ part ] tone } ")" } [ "." ] ;
    ///
    /// stem      = minor | major | dim | half | aug | "dom" ;
    /// minor     = "m" | "min" | "minor" | "mi" | minus ;     (* before 5 the minus is a flat: C-5 *)
    /// major     = "maj" | "major" | "ma" | "M" | triangle | "j" ;   (* j only before a number, right after the root *)
    /// triangle  = "Δ" | "△" | "^" ;
    /// dim       = "dim" | "diminished" | "o" | "°" | "0" ;   (* 0 right after the root: C0, C07 *)
    /// half      = "ø" | "halfdim" | "half-dim" ;
    /// aug       = "aug" | "augmented" | "+" ;
    /// number    = "2" | "4" | "5" | "6" | "69" | "6/9" | "7" | "7M" | "7maj" | "9" | "11" | "13" ;
    ///
    /// part      = "," | "/" ;                      (* inside parentheses also spaces *)
    /// tone      = altered | natural | suspended | added | omitted | major seventh | "alt" | "aug" | "dim5" | "+" ;
    /// altered   = sign ( "2" | "4" | "5" | "6" | "9" | "11" | "13" ) | flat "7" | sharp "7" ;   (* sharp 7 only after minor *)
    /// natural   = "4" | "6" | "7" | ( "5" | "9" | "11" | "13" ) [ "+" | minus ] ;  (* only after a part or in parentheses *)
    ///           | "♮" ( "7" | "9" | "11" | "13" ) ;
    /// suspended = "sus" [ "2" [ [ "/" ] "4" ] | "4" [ [ "/" ] "2" ] | flat "2" | sharp "4" | "7" | "9" | "11" | "13" ] ;
    /// added     = "add" [ sign ] ( "2" .. "15" ) ;
    /// omitted   = ( "no" | "omit" ) ( "1" .. "15" | "root" ) ;
    /// major seventh = major [ "7" | "9" | "11" | "13" ] ;   (* without a number only the triangle, or after 9, 11, 13 *)
    /// sign      = sharp | flat ;
    /// sharp     = "#" | "♯" | "+" ;
    /// flat      = "b" | "♭" | minus ;
    /// minus     = "-" | "−" | "–" | "—" ;
    /// </code>
    /// <para>
    /// What it means. Without a stem the triad is major. 7 adds the minor seventh, after <c>maj</c> the major, after <c>dim</c>
    /// the diminished one; the triangle alone means <c>maj7</c>, <c>ø</c> alone <c>m7b5</c>; <c>7M</c> is <c>maj7</c>, <c>m7M</c>, <c>m(+7)</c> and
    /// <c>m#7</c> are <c>mMaj7</c>, and <c>m9(maj7)</c> is <c>mMaj9</c>. <c>C2</c> is <c>Cadd9</c>, <c>C4</c> is <c>Csus4</c>, <c>C7/4</c> is <c>C7sus4</c>, as charts
    /// mean them. 9 implies the seventh; 11 and 13
    /// imply seventh and ninth, but 13 does not imply the 11, which players leave out (write <c>13add11</c>); 11 keeps the
    /// third. 6/9 has no seventh. 5 alone is root and fifth.
    /// </para>
    /// <para>
    /// An altered tone takes the place of the natural one that stem or number imply (<c>13b9</c> has no natural 9,
    /// <c>7b5#5</c> no natural fifth); <c>add</c> puts a tone beside what is there. <c>sus</c> is <c>sus4</c>; a suspended tone
    /// takes the place of the third and of the 9 or 11 that sounds like it (<c>11sus</c> is <c>9sus4</c>). <c>alt</c> is
    /// everything that may be altered at once, <c>1 3 b5 #5 b7 b9 #9</c>: the player chooses from it. <c>7+</c> is <c>7#5</c>.
    /// <c>no</c> leaves out every tone of that number.
    /// </para>
    /// <para>
    /// Refused is what contradicts itself: two tones that are one sound (<c>7#11b5</c>, <c>7#13</c>, <c>7b11</c>), an added tone that is
    /// there (<c>add3</c>), a tone left out that is not (<c>no9</c> without a ninth). A small letter as the root is a minor chord in
    /// German (<c>c</c>, <c>h7</c>); in English it is refused unless the chord says that it is minor (<c>am7</c>).
    /// </para>
    /// <para>
    /// Right after the root, <c>+</c> is the augmented triad (<c>C+9</c> is <c>C9#5</c>) and <c>-</c> the minor one
    /// (<c>C-9</c> is <c>Cm9</c>), later they are sharp and flat (<c>C7+9</c> is <c>C7#9</c>); accidentals right after the root
    /// belong to it (<c>Cb9</c> is C flat nine; write <c>C(b9)</c>). A slash before a number, a sign with a number, or a major
    /// seventh parts tones (<c>C7/13</c>); before a note name it announces the bass. White space ends the chord, but for
    /// parentheses and brackets; around the whole text it says nothing. <c>C[1 b2 4 #5]</c> is any formula at all.
    /// </para>
    /// </remarks>
    public static partial Chord Parse(string s, IFormatProvider? provider = null);

    /// <summary>The chords read from a text, separated by white space or commas; a comma before a tone is the chord's own (<c>C7,b9</c>).</summary>
    /// <exception cref="FormatException">Some part is not a chord.</exception>
    public static IReadOnlyList<Chord> ParseList(string text, IFormatProvider? provider = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Parsing.ParseList<Chord>(text, "a list of chords", Read, provider);
    }

    /// <summary>Reads a chord that ends at white space, at '|', at a comma that no tone follows, or with the text.</summary>
    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Chord chord)
    {
        var longest = cursor;
        if (!NoteName.Read(ref longest, out var root))
        {
            cursor =
                cursor is { Current: 'H' or 'h' } && cursor.Naming() == NoteNaming.English
                    ? Failed(cursor, "a letter from A to G; H is B natural in German, which NoteNaming.German reads")
                    : longest;
            chord = null;
            return false;
        }

        // The longest name first; where that leaves no chord, a shorter one: in German Esus4 is E, not Es.
        var furthest = longest;
        if (ReadOn(ref furthest, cursor.Position, root, out chord))
        {
            cursor = furthest;
            return true;
        }

        var length = longest.Position - cursor.Position;
        while (
            GivesBackLetter(cursor.Rest[length - 1])
            && cursor.Naming().TryRead(cursor.Rest[..(length - 1)], out root, out length)
        )
        {
            var shorter = cursor;
            shorter.Position += length;
            if (ReadOn(ref shorter, cursor.Position, root, out chord))
            {
                cursor = shorter;
                return true;
            }

            if (shorter.ErrorPosition > furthest.ErrorPosition)
            {
                furthest = shorter;
            }
        }

        cursor = furthest;
        return false;
    }

    // A sign after the root always belongs to the root.
    private static bool GivesBackLetter(char last) => char.IsLetter(last) && last is not ('b' or 'x');

    private static TextCursor Failed(TextCursor cursor, string expected)
    {
        cursor.Fail(expected);
        return cursor;
    }

    private static bool ReadOn(ref TextCursor cursor, int begin, NoteName root, [MaybeNullWhen(false)] out Chord chord)
    {
        chord = null;
        Formula formula;
        var start = cursor.Position;
        var bracket = cursor.Take('[');
        if (bracket)
        {
            if (!Formula.Read(ref cursor, out formula))
            {
                return false;
            }

            if (formula.Count == 0)
            {
                return cursor.Fail("at least one degree");
            }

            if (!cursor.Take(']'))
            {
                return cursor.Fail("a closing bracket after the degrees");
            }
        }
        else
        {
            // A small letter is a minor chord in German; in English no player knows what it is, unless minor is said.
            var isSmall = char.IsLower(cursor.Text[begin]) && cursor.Naming() != NoteNaming.Solfege;
            if (!ChordSymbolReader.Read(ref cursor, isSmall && cursor.Naming() == NoteNaming.German, out formula))
            {
                return false;
            }

            if (isSmall && !formula.Contains(new Degree(3, -1)))
            {
                return cursor.Fail(begin, "a capital letter for the root, or minor said after a small one (cm, c-7)");
            }
        }

        var bass = root;
        var slash = cursor.Take('/');
        if (slash && !NoteName.Read(ref cursor, out bass))
        {
            return false;
        }

        if (!cursor.AtEnd && cursor.Current is not ('|' or ',') && !char.IsWhiteSpace(cursor.Current))
        {
            return cursor.Fail(
                slash ? "the end of the chord after its bass"
                : bracket ? "a slash and a bass note, or the end of the chord"
                : cursor.Position == start ? ChordSymbolReader.Expected
                : ChordSymbolReader.ExpectedAfter
            );
        }

        chord = new(root, formula, bass);
        return true;
    }
}

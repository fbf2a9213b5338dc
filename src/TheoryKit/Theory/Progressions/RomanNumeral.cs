using System.Diagnostics.CodeAnalysis;
using System.Text;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Theory.Progressions;

/// <summary>
/// A chord as its place in a key: <c>ii7</c>, <c>V7</c>, <c>bVImaj7</c>, <c>viiø7</c>, <c>V7/ii</c>. Equal when written
/// alike: <c>V7/V</c> is not <c>II7</c>, though both are the same chord.
/// </summary>
/// <remarks>
/// <para>
/// The numeral is the root's degree against the major scale of the tonic, as this library counts every degree: the chord on Ab
/// is <c>bVI</c> in C major and in C minor. Accidentals stand in front.
/// </para>
/// <para>
/// A minor key is read the way its charts are written. There <c>III</c>, <c>VI</c> and <c>VII</c> stand on the natural minor
/// scale, flat sign or not: <c>i VI III VII</c> in A minor is Am F C G. Lowercase <c>iii</c>, <c>vi</c> and <c>vii</c> stand on the
/// raised tone, with or without a sharp: <c>viio7</c> and <c>#viio7</c> are G#dim7. A sharp raises an uppercase one too:
/// <c>#VI</c> is F#. Each chord is written in one of these ways, flats shown: <c>bVI</c> for F, <c>#VI</c> for F#, <c>viø7</c> for
/// F#m7b5. Numerals counted from another chord are those of a major key.
/// </para>
/// <para>
/// A lowercase numeral has a minor third: <c>ii7</c> is Dm7 in C, <c>viio7</c> Bdim7, <c>viiø7</c> Bm7b5, <c>imaj7</c>
/// CmMaj7. What follows is the quality as in a chord symbol (see <see cref="Chord.Parse(string, IFormatProvider?)"/>) without
/// its <c>m</c>; <c>IIm7</c> is read as <c>ii7</c>. <c>I6</c> is the sixth chord: the figures of figured bass for inversions
/// are not meant, and <c>I6/4</c> is refused. The bass of an inversion is told by the chord's own degree after a slash, an ordinal: <c>V7/3rd</c> is G7/B,
/// <c>V7/b7th</c> is G7/F; <c>V7/3</c> is read too.
/// </para>
/// <para>
/// A slash before another numeral counts from that chord's root instead of the tonic: <c>V7/V</c> is D7 in C major,
/// <c>V7/3rd/V</c> is D7/F#.
/// </para>
/// </remarks>
[ReadAs("a roman numeral")]
[EqualBy(nameof(Degree), nameof(Formula), nameof(Bass), nameof(Of), Operators = true)]
public sealed partial class RomanNumeral : IEquatable<RomanNumeral>, ISpanParsable<RomanNumeral>, IFormattable
{
    /// <summary>The most numerals that a chord is counted through, <c>V7/V/V</c>: 4.</summary>
    public const int MaxDepth = 4;

    private const string Expected = "a numeral from I to VII, lowercase for a minor third (as in ii7, V7, bVImaj7)";

    private const string ExpectedAfter =
        "a quality (7, maj7, o7, sus4), a bass (/3rd), a chord to count from (/V), or the end of the numeral";

    private static readonly string[] Numerals = ["I", "II", "III", "IV", "V", "VI", "VII"];
    private static readonly Degree Third = new(3);
    private static readonly Degree MinorThird = new(3, -1);

    /// <summary>A chord on a degree.</summary>
    /// <param name="degree">The root's degree against the major scale of the tonic, numbers 1 to 7.</param>
    /// <param name="formula">The formula over the root; at least one degree.</param>
    /// <param name="bass">The lowest note as a degree over the root, numbers 1 to 7; the root if null.</param>
    /// <param name="of">The chord whose root to count from instead of the tonic; none with a bass of its own.</param>
    /// <exception cref="ArgumentException">An empty formula, a degree past 7, or more than <see cref="MaxDepth"/> numerals.</exception>
    public RomanNumeral(Degree degree, Formula formula, Degree? bass = null, RomanNumeral? of = null)
    {
        if (degree.Number > Numerals.Length || bass?.Number > Numerals.Length)
        {
            throw new ArgumentException("Numerals and their basses go from 1 to 7.", nameof(degree));
        }

        if (formula.Count == 0)
        {
            throw new ArgumentException("A chord has at least one tone.", nameof(formula));
        }

        if (of is { Bass: not null } || of?.Depth >= MaxDepth)
        {
            throw new ArgumentException(
                $"A chord is counted from a numeral without a bass, through at most {MaxDepth} numerals.",
                nameof(of)
            );
        }

        Degree = degree;
        Formula = formula;
        Bass = bass == Degree.Root ? null : bass;
        Of = of;
    }

    /// <summary>
    /// The root's degree as written: against the major scale of the tonic, or of the root of <see cref="Of"/>; in a minor key 3, 6
    /// and 7 as the remarks say.
    /// </summary>
    public Degree Degree { get; }

    /// <summary>The formula over the root.</summary>
    public Formula Formula { get; }

    /// <summary>The lowest note as a degree over the chord's root; null if it is the root.</summary>
    public Degree? Bass { get; }

    /// <summary>The chord whose root this one is counted from; null for the tonic.</summary>
    public RomanNumeral? Of { get; }

    /// <summary>Whether the numeral is written small: the third is minor.</summary>
    public bool IsLowercase => IsMinorThird(Formula);

    private int Depth => 1 + (Of?.Depth ?? 0);

    /// <summary>
    /// The numeral of a chord in a key; <see cref="In(Key)"/> gives the chord back. In a minor key the flat is written, <c>bVI</c>.
    /// </summary>
    /// <exception cref="OverflowException">
    /// The root over the tonic, or the bass over the root, would need more than <see cref="Degree.MaxAlteration"/>
    /// accidentals.
    /// </exception>
    public static RomanNumeral For(Chord chord, Key key)
    {
        ArgumentNullException.ThrowIfNull(chord);
        var degree = key.DegreeOf(chord.Root);
        if (key.IsMinor && IsMovable(degree.Number) && degree.Alteration >= (IsMinorThird(chord.Formula) ? 1 : 0))
        {
            degree =
                degree.Alteration < Degree.MaxAlteration
                    ? new(degree.Number, degree.Alteration + 1)
                    : throw new OverflowException(
                        $"{chord.Root} in {key} would need more accidentals than a numeral has."
                    );
        }

        return new(degree, chord.Formula, Formula.AsDegree(chord.Root.To(chord.Bass)));
    }

    /// <summary>The chord that this numeral means in a key.</summary>
    /// <exception cref="OverflowException">A note would need more accidentals than a note name has.</exception>
    public Chord In(Key key)
    {
        var root = RootIn(key);
        return new(root, Formula, Bass is { } bass ? root.Add(bass) : null);
    }

    private NoteName RootIn(Key key)
    {
        if (Of is not null)
        {
            return Of.RootIn(key).Add(Degree);
        }

        var lower = key.IsMinor && IsMovable(Degree.Number) && Degree.Alteration >= (IsLowercase ? 1 : 0);
        return key.Tonic.Add(lower ? new(Degree.Number, Degree.Alteration - 1) : Degree);
    }

    /// <summary>Whether major and minor scale differ there.</summary>
    private static bool IsMovable(int number) => number is 3 or 6 or 7;

    private static bool IsMinorThird(Formula formula) => formula.Contains(MinorThird) && !formula.Contains(Third);

    /// <summary>The numeral as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The numeral: "G" (or null) plain, <c>bVII7</c>; "P" printed, <c>♭VII7</c>.</summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        var printed = TextFormat.IsPrinted(format);
        var text = new StringBuilder(8);
        Accidentals.Write(text, Degree.Alteration, printed);
        var numeral = Numerals[Degree.Number - 1];
        if (ChordSymbol.For(Formula, format) is not { } symbol)
        {
            text.Append(numeral).Append('[').Append(Formula.ToString(format)).Append(']');
        }
        else if (IsLowercase && WithoutMinor(symbol) is { } rest)
        {
            text.Append(numeral.ToLowerInvariant()).Append(rest);
        }
        else
        {
            text.Append(numeral).Append(symbol);
        }

        if (Bass is { } bass)
        {
            bass.Write(text.Append('/'), printed);
            text.Append(OrdinalEnding(bass.Number));
        }

        return Of is null ? text.ToString() : text.Append('/').Append(Of.ToString(format)).ToString();
    }

    /// <summary>What follows a lowercase numeral for a symbol, or null if the symbol doesn't begin with the minor third.</summary>
    private static string? WithoutMinor(string symbol) =>
        symbol switch
        {
            "m7b5" => "ø7",
            ['d', 'i', 'm', .. var rest] => $"o{rest}",
            ['m', 'M', 'a', 'j', .. var rest] => $"maj{rest}",
            ['m', 'a', 'j', ..] => null,
            ['m', .. var rest] => rest,
            ['°' or 'ø', ..] => symbol,
            _ => null,
        };

    private static string OrdinalEnding(int number) =>
        number switch
        {
            1 => "st",
            2 => "nd",
            3 => "rd",
            _ => "th",
        };

    /// <summary>Whether a numeral begins here: accidentals, then I or V. No note name begins so.</summary>
    internal static bool Begins(ReadOnlySpan<char> text) => text.TrimStart("#b♯♭♮") is ['I' or 'V' or 'i' or 'v', ..];

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out RomanNumeral numeral) =>
        Read(ref cursor, 1, out numeral);

    private static bool Read(ref TextCursor cursor, int depth, [MaybeNullWhen(false)] out RomanNumeral numeral)
    {
        numeral = null;
        if (
            !Accidentals.Read(ref cursor, Degree.MaxAlteration, out var alteration)
            || !ReadNumber(ref cursor, out var number, out var lowercase)
            || !ReadFormula(ref cursor, lowercase, out var formula)
        )
        {
            return false;
        }

        Degree? bass = null;
        if (BassLength(cursor.Rest) is var length and > 0)
        {
            var start = cursor.Position;
            if (length == 2 && cursor.Text[start - 1] == '6')
            {
                return cursor.Fail(
                    start,
                    "an ordinal for the bass (I6/5th), as 6/4 and 6/5 would be figured bass; its six-four is I/5th, its six-five V7/3rd"
                );
            }

            cursor.Position++;
            if (depth > 1)
            {
                return cursor.Fail(start, "the end: the chord that is counted from has no bass of its own");
            }

            if (!Degree.Read(ref cursor, out var degree))
            {
                return false;
            }

            bass = degree;
            cursor.Position = start + length;
        }

        RomanNumeral? of = null;
        if (cursor.Current == '/')
        {
            if (depth == MaxDepth)
            {
                return cursor.Fail($"the end after {MaxDepth} numerals");
            }

            cursor.Position++;
            if (!Read(ref cursor, depth + 1, out of))
            {
                return false;
            }
        }

        if (!cursor.AtEnd && cursor.Current != '|' && !char.IsWhiteSpace(cursor.Current))
        {
            return cursor.Fail(ExpectedAfter);
        }

        numeral = new(new(number, alteration), formula, bass, of);
        return true;
    }

    private static bool ReadNumber(ref TextCursor cursor, out int number, out bool lowercase)
    {
        // From the longest, VII, so that VI is not taken for V.
        for (var length = 3; length > 0; length--)
        {
            for (number = 1; number <= Numerals.Length; number++)
            {
                var numeral = Numerals[number - 1];
                if (numeral.Length == length && cursor.Take(numeral))
                {
                    lowercase = false;
                    return true;
                }

                if (numeral.Length == length && cursor.Take(numeral.ToLowerInvariant()))
                {
                    lowercase = true;
                    return true;
                }
            }
        }

        (number, lowercase) = (0, false);
        return cursor.Fail(Expected);
    }

    private static bool ReadFormula(ref TextCursor cursor, bool lowercase, out Formula formula)
    {
        var start = cursor.Position;
        if (cursor.Take('['))
        {
            return Formula.Read(ref cursor, out formula)
                && (formula.Count > 0 || cursor.Fail("at least one degree"))
                && (cursor.Take(']') || cursor.Fail("a closing bracket after the degrees"));
        }

        var read = lowercase
            ? cursor.Within(SymbolEnd(cursor), ReadMinor, ExpectedAfter, out formula)
            : cursor.Within(SymbolEnd(cursor), ChordSymbolReader.Read, ExpectedAfter, out formula);
        return read
            && (
                !lowercase
                || (formula.Contains(MinorThird) && !formula.Contains(Third))
                || cursor.Fail(start, "a chord with a minor third, or an uppercase numeral")
            );

        static bool ReadMinor(ref TextCursor cursor, out Formula formula) =>
            ChordSymbolReader.Read(ref cursor, minor: true, out formula);
    }

    /// <summary>Where the chord symbol ends: at a bass, a further numeral, or with the word (parentheses hold spaces).</summary>
    private static int SymbolEnd(in TextCursor cursor)
    {
        var parentheses = 0;
        for (var index = cursor.Position; index < cursor.Text.Length; index++)
        {
            var c = cursor.Text[index];
            parentheses += c switch
            {
                '(' => 1,
                ')' => -1,
                _ => 0,
            };
            if (
                c == '|'
                || (parentheses <= 0 && char.IsWhiteSpace(c))
                || (c == '/' && (Begins(cursor.Text[(index + 1)..]) || BassLength(cursor.Text[index..]) > 0))
            )
            {
                return index;
            }
        }

        return cursor.Text.Length;
    }

    /// <summary>The length of a bass at the beginning of a text, <c>/b7th</c> or <c>/3</c>; 0 if there is none.</summary>
    private static int BassLength(ReadOnlySpan<char> text)
    {
        if (text is not ['/', ..])
        {
            return 0;
        }

        var digit = 1;
        while (digit < text.Length && text[digit] is '#' or 'b' or '♯' or '♭' && digit <= Degree.MaxAlteration)
        {
            digit++;
        }

        if (digit >= text.Length || text[digit] is < '1' or > '7')
        {
            return 0;
        }

        // 1 to 5 without a sign are never tones of a symbol, so the ordinal's ending may be missing.
        var after = text[(digit + 1)..];
        return after is ['s', 't', ..] or ['n', 'd', ..] or ['r', 'd', ..] or ['t', 'h', ..] ? digit + 3
            : digit == 1 && text[digit] <= '5' && (after.IsEmpty || !char.IsLetterOrDigit(after[0])) ? digit + 1
            : 0;
    }
}

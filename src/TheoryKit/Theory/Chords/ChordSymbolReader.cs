using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Chords;

/// <summary>
/// Reads what stands after the root in a chord symbol and says which formula it means. The grammar and the meaning of each
/// part are on <see cref="Chord.Parse(string, IFormatProvider?)"/>.
/// </summary>
internal ref struct ChordSymbolReader
{
    public const string Expected =
        "a quality (m, maj7, dim, 6, 9), an altered tone (b9, #11), sus, add, no, alt, a slash and a bass note, or the end of the chord";

    public const string ExpectedAfter =
        "an altered tone (b9, #11), sus, add, no, alt, a slash and a bass note, or the end of the chord";

    private const string ExpectedFirst = "a tone in the parentheses (b9, 13, add9, no5, sus4, maj7)";
    private const string ExpectedNext = "another tone (b9, 13, add9, no5) or a closing parenthesis";
    private const string ExpectedSeventh = "7, 9, 11 or 13";

    private static readonly Degree Third = new(3);
    private static readonly Degree MinorThird = new(3, -1);
    private static readonly Degree Fifth = new(5);
    private static readonly Degree FlatFifth = new(5, -1);
    private static readonly Degree SharpFifth = new(5, 1);
    private static readonly Degree Sixth = new(6);
    private static readonly Degree Seventh = new(7);
    private static readonly Degree MinorSeventh = new(7, -1);
    private static readonly Degree DiminishedSeventh = new(7, -2);
    private static readonly Degree Ninth = new(9);

    private Formula implied; // by stem and number
    private Formula written; // each as a tone of its own
    private int altered; // numbers, as bits, whose implied natural tone gives way
    private int omitted; // numbers, as bits
    private bool suspended;
    private bool numbered; // whether the size of the chord has been said
    private Stem stem;
    private bool minor; // where the text says neither minor, diminished nor augmented

    private enum Stem
    {
        None,
        Major,
        Triangle,
        Minor,
        Diminished,
        HalfDiminished,
        Augmented,
        Dominant,
    }

    public static bool Read(ref TextCursor cursor, out Formula formula) => Read(ref cursor, minor: false, out formula);

    /// <summary>Reads a symbol; with <paramref name="minor"/> what follows a lowercase numeral, where the m goes without saying.</summary>
    public static bool Read(ref TextCursor cursor, bool minor, out Formula formula)
    {
        var reader = new ChordSymbolReader { minor = minor };
        formula = default;
        if (!reader.ReadStem(ref cursor) || !reader.ReadTail(ref cursor))
        {
            return false;
        }

        formula = reader.Compose();
        return formula.Count > 0 || cursor.Fail("a tone that is not left out");
    }

    private bool ReadStem(ref TextCursor cursor)
    {
        var begin = cursor.Position;
        stem = TakeStem(ref cursor);
        if (minor && stem is Stem.None or Stem.Major or Stem.Triangle)
        {
            // Of imaj7 the maj7 belongs to the tail, as in mMaj7.
            (stem, cursor.Position) = (Stem.Minor, begin);
        }

        implied = default(Formula)
            .With(Degree.Root)
            .With(stem is Stem.Minor or Stem.Diminished or Stem.HalfDiminished ? MinorThird : Third)
            .With(
                stem switch
                {
                    Stem.Diminished or Stem.HalfDiminished => FlatFifth,
                    Stem.Augmented => SharpFifth,
                    _ => Fifth,
                }
            );

        var start = cursor.Position;
        var number = TakeToneNumber(ref cursor);
        numbered = number != 0;
        switch (number, stem)
        {
            case (0, Stem.Triangle):
                return Extend(7, Seventh);
            case (0, Stem.HalfDiminished):
                return Extend(7, MinorSeventh);
            case (0, Stem.Dominant):
                return cursor.Fail(start, ExpectedSeventh);
            case (0, _):
                return true;
            case (7, Stem.None or Stem.Minor or Stem.Augmented) when TakesMajorBehind(ref cursor):
                return Extend(number, Seventh);
            case (7 or 9 or 11 or 13, _):
                return Extend(number, SeventhOf(stem));
            case (5, Stem.None):
                implied = implied.Without(Third);
                return true;
            case (5, Stem.Augmented):
                numbered = false;
                return true;
            case (6, Stem.None or Stem.Major or Stem.Minor or Stem.Augmented):
                implied = implied.With(Sixth);
                if (cursor.Take('9') || cursor.Take("/9"))
                {
                    implied = implied.With(Ninth);
                }

                return true;
            default:
                return cursor.Fail(
                    start,
                    stem switch
                    {
                        Stem.None => "5, 6, 7, 9, 11 or 13 (for 2 and 4 say sus2, add2, sus4 or add4)",
                        Stem.Major or Stem.Minor or Stem.Augmented => "6, 7, 9, 11 or 13",
                        _ => ExpectedSeventh,
                    }
                );
        }
    }

    private static Stem TakeStem(ref TextCursor cursor)
    {
        switch (cursor.Current)
        {
            case 'm' or 'M':
                return TakeWord(ref cursor, "major") || TakeWord(ref cursor, "maj") ? Stem.Major
                    : TakeWord(ref cursor, "minor") || TakeWord(ref cursor, "min") || TakeWord(ref cursor, "mi")
                        ? Stem.Minor
                    : TakeMa(ref cursor) || cursor.Take('M') ? Stem.Major
                    : cursor.Take('m') ? Stem.Minor
                    : Stem.None;
            case '-' or '−':
                // C-5 has a flat five; a minus before anything else is minor.
                if (Ahead(cursor, 1) == '5')
                {
                    return Stem.None;
                }

                cursor.Position++;
                return Stem.Minor;
            case 'j' or 'J':
                return TakeJ(ref cursor) ? Stem.Major : Stem.None;
            case 'Δ' or '∆' or '△' or '^':
                cursor.Position++;
                return Stem.Triangle;
            case 'ø' or 'Ø' or '∅':
                cursor.Position++;
                return Stem.HalfDiminished;
            case '°' or 'º':
                cursor.Position++;
                return Stem.Diminished;
            case 'o':
                return !Begins(cursor, "omit") && cursor.Take('o') ? Stem.Diminished : Stem.None;
            case '+':
                cursor.Position++;
                return Stem.Augmented;
            case 'd' or 'D':
                return TakeWord(ref cursor, "dim") ? Stem.Diminished
                    : TakeWord(ref cursor, "dom") ? Stem.Dominant
                    : Stem.None;
            case 'a' or 'A':
                return TakeWord(ref cursor, "aug") ? Stem.Augmented : Stem.None;
            default:
                return Stem.None;
        }
    }

    private bool ReadTail(ref TextCursor cursor)
    {
        while (true)
        {
            if (cursor.Take('('))
            {
                if (!ReadParentheses(ref cursor))
                {
                    return false;
                }

                continue;
            }

            var parted = cursor.Current is ',' or '/' && PartsTones(cursor);
            cursor.Position += parted ? 1 : 0;
            var start = cursor.Position;
            if (!ReadItem(ref cursor, parted, inside: false))
            {
                return false;
            }

            if (cursor.Position == start)
            {
                return true;
            }
        }
    }

    private bool ReadParentheses(ref TextCursor cursor)
    {
        var first = true;
        while (true)
        {
            while (cursor.SkipSpaces() || (!first && (cursor.Take(',') || cursor.Take('/')))) { }

            if (!first && cursor.Take(')'))
            {
                return true;
            }

            var start = cursor.Position;
            if (!ReadItem(ref cursor, parted: true, inside: true))
            {
                return false;
            }

            if (cursor.Position == start)
            {
                return cursor.Fail(first ? ExpectedFirst : ExpectedNext);
            }

            first = false;
        }
    }

    /// <summary>Reads one part of the tail; true without moving where there is none.</summary>
    private bool ReadItem(ref TextCursor cursor, bool parted, bool inside)
    {
        switch (cursor.Current)
        {
            case '#' or '♯' or 'b' or '♭' or '+' or '-' or '−':
                return ReadAltered(ref cursor);
            case >= '0' and <= '9' when parted:
                return ReadNatural(ref cursor);
            case 's' or 'S':
                return !TakeWord(ref cursor, "sus") || ReadSuspension(ref cursor);
            case 'n' or 'N':
                return !TakeWord(ref cursor, "no") || ReadOmission(ref cursor, inside);
            case 'o' or 'O':
                return !TakeWord(ref cursor, "omit") || ReadOmission(ref cursor, inside);
            case 'm' or 'M' or 'Δ' or '∆' or '△' or '^':
                return ReadMajorSeventh(ref cursor);
            case 'a' or 'A':
                if (TakeWord(ref cursor, "add"))
                {
                    return ReadAddition(ref cursor, inside);
                }

                if (TakeWord(ref cursor, "aug"))
                {
                    cursor.Take('5');
                    Alter(SharpFifth);
                    return true;
                }

                return !Begins(cursor, "alt") || ReadAlt(ref cursor);
            default:
                return true;
        }
    }

    private bool ReadAltered(ref TextCursor cursor)
    {
        var plus = cursor.Current == '+';
        var alteration = TakeSign(ref cursor);
        var start = cursor.Position;
        switch (TakeToneNumber(ref cursor), alteration)
        {
            case (0, _) when plus: // C7+
                Alter(SharpFifth);
                return true;
            case (7, 1) when stem == Stem.Minor && !HasSeventh: // m(+7), the raised seventh of minor
                numbered = true;
                return Extend(7, Seventh);
            case (7, -1):
                written = written.With(MinorSeventh);
                numbered = true;
                return true;
            case (var number and (2 or 4 or 5 or 6 or 9 or 11 or 13), _):
                Alter(new(number, alteration));
                return true;
            default:
                return cursor.Fail(start, "5, 9, 11 or 13 (also 2, 4, 6) after the sharp or flat");
        }
    }

    private bool ReadNatural(ref TextCursor cursor)
    {
        var start = cursor.Position;
        var number = TakeToneNumber(ref cursor);
        switch (number)
        {
            case 7 when !HasSeventh:
                written = written.With(SeventhOf(stem));
                numbered = true;
                return true;
            case 6 or 9 or 11 or 13:
                written = written.With(new(number));
                return true;
            default:
                return cursor.Fail(start, "6, 9, 11, 13, an altered tone (b9, #11), or add and a number");
        }
    }

    private bool ReadSuspension(ref TextCursor cursor)
    {
        suspended = true;
        if (cursor.Current is '2' or '4')
        {
            var first = cursor.Current - '0';
            cursor.Position++;
            written = written.With(new(first));
            var other = first == 2 ? '4' : '2';
            if (cursor.Current == other || (cursor.Current == '/' && Ahead(cursor, 1) == other))
            {
                cursor.Position += cursor.Current == '/' ? 1 : 0;
                written = written.With(new(cursor.Current - '0'));
                cursor.Position++;
            }

            return true;
        }

        var parenthesis = cursor.Current == '(' && Ahead(cursor, 3) == ')' ? 1 : 0;
        var signed = (Sign(Ahead(cursor, parenthesis)), Ahead(cursor, parenthesis + 1));
        if (signed is (-1, '2') or (1, '4'))
        {
            written = written.With(new(signed.Item2 - '0', signed.Item1));
            cursor.Position += 2 + (2 * parenthesis);
            return true;
        }

        written = written.With(new(4));
        var start = cursor.Position;
        switch (TakeToneNumber(ref cursor))
        {
            case 0:
                return true;
            case var number and (7 or 9 or 11 or 13) when !numbered:
                numbered = true;
                return Extend(number, SeventhOf(stem));
            default:
                return cursor.Fail(start, "2 or 4 after sus");
        }
    }

    private bool ReadAddition(ref TextCursor cursor, bool inside)
    {
        _ = inside && cursor.SkipSpaces();
        var start = cursor.Position;
        var alteration = TakeSign(ref cursor);
        var number = TakeToneNumber(ref cursor);
        if (number is < 2 or > Degree.MaxNumber)
        {
            return cursor.Fail(start, "the tone to add (as in add9, add#11)");
        }

        if (number == 7 && alteration == 0)
        {
            return cursor.Fail(start, "another tone to add: the sevenths are written 7 or maj7");
        }

        written = written.With(new(number, alteration));
        return true;
    }

    private bool ReadOmission(ref TextCursor cursor, bool inside)
    {
        _ = inside && cursor.SkipSpaces();
        if (TakeWord(ref cursor, "root"))
        {
            omitted |= 1 << 1;
            return true;
        }

        var start = cursor.Position;
        var number = TakeToneNumber(ref cursor);
        if (number is < 1 or > Degree.MaxNumber)
        {
            return cursor.Fail(start, "the number of the tone left out (as in no3, omit5)");
        }

        if (!TakeWord(ref cursor, number == 3 ? "rd" : "th"))
        {
            TakeWord(ref cursor, "d");
        }

        omitted |= 1 << number;
        return true;
    }

    /// <summary>A major seventh written behind: m(maj7), +M7, -Δ, sus4maj7.</summary>
    private bool ReadMajorSeventh(ref TextCursor cursor)
    {
        var start = cursor.Position;
        var triangle = cursor.Take('Δ') || cursor.Take('∆') || cursor.Take('△') || cursor.Take('^');
        if (
            !triangle
            && !TakeWord(ref cursor, "major")
            && !TakeWord(ref cursor, "maj")
            && !TakeMa(ref cursor)
            && !cursor.Take('M')
        )
        {
            return true;
        }

        var number = TakeToneNumber(ref cursor);
        if (number is not (7 or 9 or 11 or 13) && !(number == 0 && triangle))
        {
            return cursor.Fail(start, "maj7, maj9, maj11 or maj13");
        }

        if (implied.Contains(MinorSeventh) || implied.Contains(Seventh))
        {
            return cursor.Fail(start, "no other seventh, the chord has one");
        }

        numbered = true;
        return Extend(number, Seventh);
    }

    private bool ReadAlt(ref TextCursor cursor)
    {
        var dominant = stem is Stem.None or Stem.Dominant && implied.Contains(Third);
        if (!dominant || (numbered && !implied.Contains(MinorSeventh)))
        {
            return cursor.Fail("alt only after a root or a dominant number (7alt)");
        }

        TakeWord(ref cursor, "alt");
        numbered = true;
        implied = implied.With(MinorSeventh);
        Alter(FlatFifth);
        Alter(SharpFifth);
        Alter(new(9, -1));
        Alter(new(9, 1));
        return true;
    }

    private readonly bool HasSeventh => implied.WithNumber(7) is not null || written.WithNumber(7) is not null;

    private static Degree SeventhOf(Stem stem) =>
        stem switch
        {
            Stem.Major or Stem.Triangle => Seventh,
            Stem.Diminished => DiminishedSeventh,
            _ => MinorSeventh,
        };

    private bool Extend(int number, Degree seventh)
    {
        implied = implied.With(seventh);
        if (number >= 9)
        {
            implied = implied.With(Ninth);
        }

        if (number >= 11)
        {
            implied = implied.With(new(number));
        }

        return true;
    }

    private void Alter(Degree degree)
    {
        written = written.With(degree);
        altered |= 1 << degree.Number;
    }

    private readonly Formula Compose()
    {
        var tones = implied;
        if (suspended)
        {
            tones = tones.Without(Third).Without(MinorThird);
            tones = written.Contains(new Degree(2)) ? tones.Without(Ninth) : tones;
            tones = written.Contains(new Degree(4)) ? tones.Without(new(11)) : tones;
        }

        for (var numbers = altered; numbers != 0; numbers &= numbers - 1)
        {
            tones = tones.Without(new(int.TrailingZeroCount(numbers)));
        }

        tones = tones.Union(written);
        if (omitted != 0)
        {
            foreach (var tone in tones)
            {
                if ((omitted & (1 << tone.Number)) != 0)
                {
                    tones = tones.Without(tone);
                }
            }
        }

        return tones;
    }

    /// <summary>Whether the slash or comma here parts tones (C7/13, C7/b9, Cm/maj7) and does not announce a bass.</summary>
    private static bool PartsTones(TextCursor cursor)
    {
        cursor.Position++;
        return cursor.Current switch
        {
            >= '0' and <= '9' or 'Δ' or '∆' or '△' or '^' => true,
            'm' or 'M' => (
                TakeWord(ref cursor, "major") || TakeWord(ref cursor, "maj") || TakeMa(ref cursor) || cursor.Take('M')
            ) && char.IsAsciiDigit(cursor.Current),
            var c => Sign(c) != 0 && char.IsAsciiDigit(Ahead(cursor, 1)),
        };
    }

    private static int Sign(char c) =>
        c switch
        {
            '#' or '♯' or '+' => 1,
            'b' or '♭' or '-' or '−' => -1,
            _ => 0,
        };

    private static int TakeSign(ref TextCursor cursor)
    {
        var sign = Sign(cursor.Current);
        cursor.Position += Math.Abs(sign);
        return sign;
    }

    /// <summary>Takes a number of one digit, or of two from 10 to 15; 0 if there is none.</summary>
    private static int TakeToneNumber(ref TextCursor cursor)
    {
        if (cursor.Current is not (>= '0' and <= '9'))
        {
            return 0;
        }

        var number = cursor.Current - '0';
        cursor.Position++;
        if (number == 1 && cursor.Current is >= '0' and <= '5')
        {
            number = 10 + cursor.Current - '0';
            cursor.Position++;
        }

        return number;
    }

    /// <summary>Takes "j" for major, which stands only before a number: Cj7.</summary>
    private static bool TakeJ(ref TextCursor cursor) =>
        char.IsAsciiDigit(Ahead(cursor, 1)) && (cursor.Take('j') || cursor.Take('J'));

    /// <summary>Takes the M of 7M and m7M.</summary>
    private static bool TakesMajorBehind(ref TextCursor cursor) =>
        !char.IsLetterOrDigit(Ahead(cursor, 1)) && cursor.Take('M');

    /// <summary>Takes "ma" for major, but not the beginning of madd9, where m is minor.</summary>
    private static bool TakeMa(ref TextCursor cursor) =>
        Ahead(cursor, 2) is not ('d' or 'D' or 'u' or 'U' or 'l' or 'L') && TakeWord(ref cursor, "ma");

    private static bool TakeWord(ref TextCursor cursor, ReadOnlySpan<char> word)
    {
        if (!Begins(cursor, word))
        {
            return false;
        }

        cursor.Position += word.Length;
        return true;
    }

    private static bool Begins(in TextCursor cursor, ReadOnlySpan<char> word)
    {
        if (cursor.Text.Length - cursor.Position < word.Length)
        {
            return false;
        }

        for (var index = 0; index < word.Length; index++)
        {
            if ((cursor.Text[cursor.Position + index] | 0x20) != word[index])
            {
                return false;
            }
        }

        return true;
    }

    private static char Ahead(in TextCursor cursor, int count) =>
        cursor.Position + count < cursor.Text.Length ? cursor.Text[cursor.Position + count] : '\0';
}

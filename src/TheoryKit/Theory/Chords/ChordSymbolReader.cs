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
    private const string ExpectedZero = "no 0, which is the sign of a diminished chord right after the root (C0, C07)";

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
    private int omittedAt; // where the last of them stands
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
        var start = cursor.Position;
        formula = default;
        if (!reader.ReadStem(ref cursor) || !reader.ReadTail(ref cursor))
        {
            return false;
        }

        TakeFullStop(ref cursor);

        if (!reader.LeavesOutOnlyTones(ref cursor))
        {
            return false;
        }

        formula = reader.Compose();
        return formula.Count > 0 ? IsSensible(ref cursor, start, formula) : cursor.Fail("a tone that is not left out");
    }

    /// <summary>Takes a full stop with which a symbol ends, as an abbreviation does (C7alt.).</summary>
    private static void TakeFullStop(ref TextCursor cursor)
    {
        var after = Ahead(cursor, 1);
        if (cursor.Current == '.' && (after is '\0' or '|' or ',' or '/' or ')' || char.IsWhiteSpace(after)))
        {
            cursor.Position++;
        }
    }

    /// <summary>Whether every number that is left out has a tone; a third is also left out of sus and 5, an 11 of 13.</summary>
    private readonly bool LeavesOutOnlyTones(ref TextCursor cursor)
    {
        for (var numbers = omitted; numbers != 0; numbers &= numbers - 1)
        {
            var number = int.TrailingZeroCount(numbers);
            if (
                implied.WithNumber(number) is null
                && written.WithNumber(number) is null
                && !(number == 3 && implied.Contains(Fifth))
                && !(number == 11 && implied.Contains(new Degree(13)))
            )
            {
                return cursor.Fail(omittedAt, $"a tone that the chord has, to leave it out: it has no {number}");
            }
        }

        return true;
    }

    /// <summary>Whether no two tones are one sound: #11 beside b5, b11 beside 3, #13 beside b7.</summary>
    private static bool IsSensible(ref TextCursor cursor, int start, Formula formula)
    {
        if (formula.PitchClasses.Count == formula.Count)
        {
            return true;
        }

        var sounds = new Dictionary<int, Degree>();
        foreach (var tone in formula)
        {
            if (!sounds.TryAdd(tone.PitchClass, tone))
            {
                return cursor.Fail(
                    start,
                    $"tones of different sound, but {sounds[tone.PitchClass]} and {tone} are one; leave one of them out"
                );
            }
        }

        return true;
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
            case (0, _) when cursor.Current == '0': // after m or dim
                return cursor.Fail(ExpectedZero);
            case (0, _):
                return true;
            case (7, Stem.None or Stem.Minor or Stem.Augmented) when TakesMajorBehind(ref cursor, out var size):
                return Extend(size, Seventh);
            case (5, Stem.None) when SignBehind(cursor) is not 0 and var sign: // C5+
                cursor.Position++;
                numbered = false;
                Alter(new(5, sign));
                return true;
            case (7 or 9 or 11 or 13, _):
                return Extend(number, SeventhOf(stem));
            case (5, Stem.None):
                implied = implied.Without(Third);
                return true;
            case (5, Stem.Augmented):
                numbered = false;
                return true;
            case (2, Stem.None or Stem.Minor):
                numbered = false;
                written = written.With(Ninth);
                return true;
            case (4, Stem.None):
                numbered = false;
                return Suspend(new(4));
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
                        Stem.None => "2 (added ninth), 4 (sus4), 5, 6, 7, 9, 11 or 13",
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
                    : TakeM(ref cursor) ? Stem.Minor
                    : Stem.None;
            case var minus when IsMinus(minus):
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
            case '°' or 'º' or '0':
                cursor.Position++;
                return Stem.Diminished;
            case 'h' or 'H':
                return TakeWord(ref cursor, "halfdim") || TakeWord(ref cursor, "half-dim")
                    ? Stem.HalfDiminished
                    : Stem.None;
            case 'o':
                return !Begins(cursor, "omit") && cursor.Take('o') ? Stem.Diminished : Stem.None;
            case '+':
                cursor.Position++;
                return Stem.Augmented;
            case 'd' or 'D':
                return TakeWord(ref cursor, "diminished") || TakeWord(ref cursor, "dim") ? Stem.Diminished
                    : TakeWord(ref cursor, "dom") ? Stem.Dominant
                    : Stem.None;
            case 'a' or 'A':
                return TakeWord(ref cursor, "augmented") || TakeWord(ref cursor, "aug") ? Stem.Augmented : Stem.None;
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
            case '#' or '♯' or 'b' or '♭' or '+':
            case var minus when IsMinus(minus):
                return ReadAltered(ref cursor);
            case '♮':
                return ReadNaturalSign(ref cursor);
            case >= '0' and <= '9' when parted:
                return ReadNatural(ref cursor);
            case 's' or 'S':
                return !(TakeWord(ref cursor, "suspended") || TakeWord(ref cursor, "sus"))
                    || ReadSuspension(ref cursor);
            case 'n' or 'N':
                return !TakeWord(ref cursor, "no") || ReadOmission(ref cursor, inside);
            case 'o' or 'O':
                return !TakeWord(ref cursor, "omit") || ReadOmission(ref cursor, inside);
            case 'm' or 'M' or 'Δ' or '∆' or '△' or '^':
                return ReadMajorSeventh(ref cursor);
            case 'd' or 'D':
                if (TakeWord(ref cursor, "dim"))
                {
                    Alter(FlatFifth);
                    return cursor.Take('5') || cursor.Fail("5 after dim behind the number (7dim5)");
                }

                return true;
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
            case (7, -1) when !HasSeventh:
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
            case 5 or 9 or 11 or 13 when SignBehind(cursor) is not 0 and var sign: // C7(9-), C7/5+
                cursor.Position++;
                Alter(new(number, sign));
                return true;
            case 7 when !HasSeventh:
                written = written.With(SeventhOf(stem));
                numbered = true;
                return true;
            case 4 when !suspended:
                return Suspend(new(4));
            case 6 or 9 or 11 or 13:
                written = written.With(new(number));
                return true;
            default:
                return cursor.Fail(start, "6, 9, 11, 13, an altered tone (b9, #11), or add and a number");
        }
    }

    /// <summary>A natural sign: before 7 the major seventh, before 9, 11 or 13 the tone itself.</summary>
    private bool ReadNaturalSign(ref TextCursor cursor)
    {
        cursor.Position++;
        var start = cursor.Position;
        switch (TakeToneNumber(ref cursor))
        {
            case 7 when !implied.Contains(MinorSeventh) || stem == Stem.Minor:
                implied = implied.Without(MinorSeventh);
                numbered = true;
                return Extend(7, Seventh);
            case var number and (9 or 11 or 13):
                written = written.With(new(number));
                return true;
            default:
                return cursor.Fail(start, "7, 9, 11 or 13 after the natural sign");
        }
    }

    private bool Suspend(Degree tone)
    {
        suspended = true;
        written = written.With(tone);
        return true;
    }

    private bool ReadSuspension(ref TextCursor cursor)
    {
        suspended = true;
        if (cursor is { Current: '(' } && Ahead(cursor, 1) is '2' or '4')
        {
            // sus(4), sus(2,4)
            var inside = cursor;
            inside.Position++;
            if (ReadSuspension(ref inside) && inside.Take(')'))
            {
                cursor = inside;
                return true;
            }
        }

        if (cursor.Current is '2' or '4')
        {
            var first = cursor.Current - '0';
            cursor.Position++;
            written = written.With(new(first));
            var other = first == 2 ? '4' : '2';
            if (cursor.Current == other || (cursor.Current is '/' or ',' && Ahead(cursor, 1) == other))
            {
                cursor.Position += cursor.Current is '/' or ',' ? 1 : 0;
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
            case var number and (9 or 11 or 13) when numbered: // 7sus13
                written = written.With(new(number));
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
        var parenthesis = cursor.Take('(');
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

        var tone = new Degree(number, alteration);
        if ((implied.Contains(tone) && !(suspended && number == 3)) || written.Contains(tone))
        {
            return cursor.Fail(start, $"another tone to add: the chord has its {tone}");
        }

        written = written.With(tone);
        return !parenthesis || cursor.Take(')') || cursor.Fail("a closing parenthesis");
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
        omittedAt = start;
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
        var large = implied.Contains(MinorSeventh) && implied.Contains(Ninth); // m9(maj7): the seventh of the 9 is said
        if (number is not (7 or 9 or 11 or 13) && !(number == 0 && (triangle || large)))
        {
            return cursor.Fail(start, "maj7, maj9, maj11 or maj13");
        }

        if (number is 0 or 7 && large)
        {
            implied = implied.Without(MinorSeventh);
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

        _ = TakeWord(ref cursor, "altered") || TakeWord(ref cursor, "alt");
        numbered = true;
        implied = implied.With(MinorSeventh);
        Alter(FlatFifth);
        Alter(SharpFifth);
        Alter(new(9, -1));
        Alter(new(9, 1));
        return true;
    }

    /// <summary>Takes a sign that stands behind its number and before the next part or the end: the - of 9-.</summary>
    private static int SignBehind(TextCursor cursor)
    {
        var sign = cursor.Current is '+' || IsMinus(cursor.Current) ? Sign(cursor.Current) : 0;
        return char.IsAsciiDigit(Ahead(cursor, 1)) ? 0 : sign;
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
            'a' or 'A' => Begins(cursor, "add"),
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
            'b' or '♭' => -1,
            _ => IsMinus(c) ? -1 : 0,
        };

    /// <summary>A hyphen, or one of the dashes and the minus that are typed for it.</summary>
    private static bool IsMinus(char c) => c is '-' or '−' or '‐' or '‑' or '–' or '—';

    private static int TakeSign(ref TextCursor cursor)
    {
        var sign = Sign(cursor.Current);
        cursor.Position += Math.Abs(sign);
        return sign;
    }

    /// <summary>Takes a number of one digit but 0, or of two from 10 to 15; 0 if there is none.</summary>
    private static int TakeToneNumber(ref TextCursor cursor)
    {
        if (cursor.Current is not (>= '1' and <= '9'))
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

    /// <summary>Takes the m of minor, with a full stop before a number (m.7).</summary>
    private static bool TakeM(ref TextCursor cursor)
    {
        if (!cursor.Take('m'))
        {
            return false;
        }

        cursor.Position += cursor.Current == '.' && char.IsAsciiDigit(Ahead(cursor, 1)) ? 1 : 0;
        return true;
    }

    /// <summary>Takes "j" for major, which stands only before a number: Cj7.</summary>
    private static bool TakeJ(ref TextCursor cursor) =>
        char.IsAsciiDigit(Ahead(cursor, 1)) && (cursor.Take('j') || cursor.Take('J'));

    /// <summary>Takes the major that stands behind its 7, and its size: 7M, m7M, 7M9, 7maj, 7(maj).</summary>
    private static bool TakesMajorBehind(ref TextCursor cursor, out int size)
    {
        size = 7;
        var ahead = cursor;
        var parenthesis = ahead.Take('(');
        if (parenthesis || Begins(ahead, "maj"))
        {
            if (!TakeWord(ref ahead, "maj") || (parenthesis && !ahead.Take(')')) || char.IsLetterOrDigit(ahead.Current))
            {
                return false;
            }
        }
        else if (!ahead.Take('M') || char.IsLetter(ahead.Current))
        {
            return false;
        }
        else if (char.IsAsciiDigit(ahead.Current))
        {
            size = TakeToneNumber(ref ahead);
            if (size is not (9 or 11 or 13))
            {
                return false;
            }
        }

        cursor = ahead;
        return true;
    }

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
        cursor.Take('.');
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

using System.Text;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Scales;

/// <summary>
/// A key: a tonic, major or minor. Equal when both agree, spelling included. The default value is C major.
/// </summary>
/// <remarks>
/// Text: <c>Eb major</c>, <c>C minor</c>. Also reads <c>Eb</c>, <c>Ebmaj</c>, <c>Cm</c> and <c>Cmin</c>; the case of the
/// letter says nothing, <c>c</c> is C major like <c>C</c>. With <see cref="NoteNaming.German"/> also <c>Es-Dur</c>, <c>cis-Moll</c>,
/// <c>Cismoll</c>.
/// </remarks>
[ReadAs("a key")]
[EqualBy(nameof(Tonic), nameof(IsMinor))]
public readonly partial struct Key : IEquatable<Key>, ISpanParsable<Key>, IFormattable
{
    /// <summary>The most sharps or flats that a printed signature has: 7.</summary>
    public const int MostPrinted = 7;

    // The relative major lies three fifths above a minor tonic.
    private const int MinorFifths = 3;

    // Letters in the order in which sharps enter a signature; flats enter from the other end.
    private static ReadOnlySpan<byte> Sharpened => "FCGDAEB"u8;

    /// <summary>A key on a tonic, major unless said otherwise.</summary>
    public Key(NoteName tonic, bool isMinor = false)
    {
        Tonic = tonic;
        IsMinor = isMinor;
    }

    /// <summary>The tonic.</summary>
    public NoteName Tonic { get; }

    /// <summary>Whether it is minor; major if not.</summary>
    public bool IsMinor { get; }

    /// <summary>
    /// The sharps (positive) or flats (negative) of the signature. Past <see cref="MostPrinted"/> there are double ones among
    /// them, and nobody prints it: G# major has 8.
    /// </summary>
    public int Signature => Tonic.Fifths - (IsMinor ? MinorFifths : 0);

    /// <summary>Whether the signature has at most seven sharps or flats, so that it is printed; thirty keys are.</summary>
    public bool IsPrinted => Math.Abs(Signature) <= MostPrinted;

    /// <summary>The altered notes in the order in which the signature has them: Bb Eb Ab for Eb major.</summary>
    /// <exception cref="OverflowException">A note would need more accidentals than a note name has.</exception>
    public IReadOnlyList<NoteName> SignatureNotes
    {
        get
        {
            var (count, letters) = (Math.Abs(Signature), Diatonic.StepsPerOctave);
            var notes = new NoteName[Math.Min(count, letters)];
            for (var index = 0; index < notes.Length; index++)
            {
                var letter = Enum.Parse<Letter>(
                    ((char)Sharpened[Signature > 0 ? index : letters - 1 - index]).ToString()
                );
                var times = (count + letters - 1 - index) / letters;
                notes[index] =
                    times <= NoteName.MaxAlteration
                        ? new(letter, Math.Sign(Signature) * times)
                        : throw new OverflowException($"The signature of {this} has a note with {times} accidentals.");
            }

            return notes;
        }
    }

    /// <summary>The major or natural minor scale.</summary>
    public Scale Scale => new(Tonic, IsMinor ? ScaleType.Minor : ScaleType.Major);

    /// <summary>The key of the other kind with the same signature: C minor for Eb major.</summary>
    /// <exception cref="OverflowException">Its tonic would need too many accidentals.</exception>
    public Key Relative => IsMinor ? new(Tonic + new Interval(2, 3)) : new(Tonic - new Interval(2, 3), true);

    /// <summary>The key of the other kind on the same tonic.</summary>
    public Key Parallel => new(Tonic, !IsMinor);

    /// <summary>The key an interval away.</summary>
    /// <exception cref="OverflowException">Its tonic would need too many accidentals.</exception>
    public Key Transpose(Interval interval) => new(Tonic + interval, IsMinor);

    /// <summary>
    /// The same key by sound with the fewest sharps or flats in its signature; of six sharps and six flats the side that
    /// this one is on.
    /// </summary>
    public Key Simplest()
    {
        var (minor, signature) = (IsMinor, Signature);
        // Twelve fifths come round to the same sound.
        var nearest = Diatonic.Modulo(signature + 5, 12) - 5;
        var simplest = nearest == 6 && signature < 0 ? -6 : nearest;
        return Enum.GetValues<Letter>()
            .SelectMany(letter => Enumerable.Range(-1, 3).Select(alteration => new NoteName(letter, alteration)))
            .Select(tonic => new Key(tonic, minor))
            .First(key => key.Signature == simplest);
    }

    /// <summary>
    /// How a pitch class is spelled in this key: as in its scale; between the tones of the scale as in the harmonic
    /// chromatic scale, with b2 b3 #4 b6 b7 over the tonic, major and minor alike. (The notes from five fifths below the
    /// tonic to six above.)
    /// </summary>
    /// <param name="pitchClass">Any number; counted modulo 12.</param>
    /// <exception cref="OverflowException">It would need more accidentals than a note name has.</exception>
    public NoteName NameOf(int pitchClass)
    {
        ReadOnlySpan<sbyte> steps = [0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6];
        var above = Diatonic.Modulo(pitchClass - Tonic.PitchClass, Diatonic.SemitonesPerOctave);
        return Tonic + new Interval(steps[above], above);
    }

    /// <summary>The note as this key spells it; see <see cref="NameOf(int)"/>.</summary>
    /// <exception cref="OverflowException">It would need more accidentals than a note name has.</exception>
    public NoteName Spell(NoteName note) => NameOf(note.PitchClass);

    /// <summary>The chord with root and bass as this key spells them.</summary>
    /// <exception cref="OverflowException">A note would need more accidentals than a note name has.</exception>
    public Chord Spell(Chord chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        return new(Spell(chord.Root), chord.Formula, Spell(chord.Bass));
    }

    /// <summary>The number that a note has over the tonic, counted against the major scale: Eb is b6 in G major and in G minor.</summary>
    /// <exception cref="OverflowException">It would need more than <see cref="Degree.MaxAlteration"/> accidentals.</exception>
    public Degree DegreeOf(NoteName note) => Formula.AsDegree(Tonic.To(note));

    /// <summary>The key as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The key: "G" (or null) plain, <c>Eb major</c>; "P" printed, <c>E♭ major</c>; the tonic in the language of a <see cref="NoteNaming"/>.</summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        var text = new StringBuilder();
        Tonic.Write(text, TextFormat.IsPrinted(format), NoteNaming.Of(formatProvider));
        return text.Append(IsMinor ? " minor" : " major").ToString();
    }

    /// <summary>Reads a key up to the end, a comma or a colon.</summary>
    internal static bool Read(ref TextCursor cursor, out Key key)
    {
        key = default;
        if (!NoteName.Read(ref cursor, out var tonic))
        {
            return false;
        }

        cursor.SkipSpaces();
        var german = cursor.Naming() == NoteNaming.German;
        _ = german && cursor.Take('-');
        var start = cursor.Position;
        while (char.IsAsciiLetter(cursor.Current))
        {
            cursor.Position++;
        }

        var isMinor = false;
        switch (cursor.Text[start..cursor.Position])
        {
            case "" or "maj" or "major" or "Major" or "M":
                break;
            case "m" or "min" or "minor" or "Minor":
                isMinor = true;
                break;
            case "dur" or "Dur" when german:
                break;
            case "moll" or "Moll" when german:
                isMinor = true;
                break;
            default:
                return cursor.Fail(start, "major or minor after the tonic (as in \"Eb major\", \"Cm\")");
        }

        cursor.SkipSpaces();
        key = new(tonic, isMinor);
        return cursor.AtEnd
            || cursor.Current is ',' or ':'
            || cursor.Fail("major or minor after the tonic (as in \"Eb major\", \"Cm\")");
    }
}

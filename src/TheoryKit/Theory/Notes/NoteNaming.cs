using System.Text;
using TheoryKit.Values;

namespace TheoryKit.Theory.Notes;

/// <summary>
/// How note names are said in a language. It is a format provider: <c>note.ToString("G", NoteNaming.German)</c> writes
/// <c>Es</c>, <c>NoteName.Parse("Fis", NoteNaming.German)</c> reads it back. Everything that holds note names (pitches,
/// chords, scales, keys, changes) passes it on. Each naming is one instance, equal only to itself.
/// </summary>
/// <remarks>
/// Every name of every language reads back, upper and lower case alike. Where a text could go on in two ways the longest
/// name is taken (<c>Es</c>, not E and s).
/// </remarks>
public sealed class NoteNaming : IFormatProvider
{
    private readonly Reader<NoteName> reader;
    private readonly Action<StringBuilder, NoteName, bool> writer;

    private NoteNaming(string name, Reader<NoteName> reader, Action<StringBuilder, NoteName, bool> writer)
    {
        Name = name;
        this.reader = reader;
        this.writer = writer;
    }

    /// <summary>C D E F G A B with # and b: <c>Bb</c>, <c>F#</c>.</summary>
    public static NoteNaming English { get; } = new("English", ReadEnglish, WriteEnglish);

    /// <summary>
    /// C D E F G A H with -is and -es: <c>Fis</c>, <c>Des</c>, <c>Es</c>, <c>As</c>, <c>B</c> for B flat, <c>Heses</c> for B
    /// double flat.
    /// </summary>
    /// <remarks>
    /// Also reads <c>Hes</c> and <c>Bb</c> for B flat, <c>Asas</c> for <c>Ases</c>, and signs after the letter (<c>F#</c>,
    /// <c>Eb</c>), as chord sheets have them. <c>Bes</c> and <c>B#</c> are not read: players disagree which note they mean.
    /// </remarks>
    public static NoteNaming German { get; } = new("German", ReadGerman, WriteGerman);

    /// <summary>
    /// Fixed do: Do Re Mi Fa Sol La Si with # and b, <c>Sib</c>, <c>Fa#</c>. Also reads <c>Ré</c>.
    /// </summary>
    public static NoteNaming Solfege { get; } = new("Solfège", ReadSolfege, WriteSolfege);

    /// <summary>All namings.</summary>
    public static IReadOnlyList<NoteNaming> Known { get; } = [English, German, Solfege];

    /// <summary>The name of the language or system.</summary>
    public string Name { get; }

    /// <summary>The naming that a format provider asks for; <see cref="English"/> if it asks for none.</summary>
    public static NoteNaming Of(IFormatProvider? provider) =>
        provider?.GetFormat(typeof(NoteNaming)) as NoteNaming ?? English;

    /// <summary>This naming if that is the type asked for, else null.</summary>
    public object? GetFormat(Type? formatType) => formatType == typeof(NoteNaming) ? this : null;

    /// <summary>The name of the language or system.</summary>
    public override string ToString() => Name;

    /// <summary>Reads the longest name that begins at the cursor.</summary>
    internal bool Read(ref TextCursor cursor, out NoteName note) => reader(ref cursor, out note);

    /// <summary>
    /// Reads the longest name at the beginning of a text. To go back to a shorter one (<c>Esus4</c> in German is E, not Es),
    /// give the text cut to one character less than the <paramref name="length"/> of the last.
    /// </summary>
    internal bool TryRead(ReadOnlySpan<char> text, out NoteName note, out int length)
    {
        var cursor = new TextCursor(text, this);
        var read = reader(ref cursor, out note);
        length = read ? cursor.Position : 0;
        return read;
    }

    internal void Write(StringBuilder text, NoteName note, bool printed) => writer(text, note, printed);

    private static bool ReadEnglish(ref TextCursor cursor, out NoteName note)
    {
        note = default;
        var letter = "CDEFGAB".IndexOf(char.ToUpperInvariant(cursor.Current), StringComparison.Ordinal);
        if (letter < 0)
        {
            return cursor.Fail("a letter from A to G");
        }

        cursor.Position++;
        return ReadSigns(ref cursor, (Letter)letter, out note);
    }

    private static void WriteEnglish(StringBuilder text, NoteName note, bool printed)
    {
        text.Append("CDEFGAB"[(int)note.Letter]);
        Accidentals.Write(text, note.Alteration, printed);
    }

    private static bool ReadGerman(ref TextCursor cursor, out NoteName note)
    {
        note = default;
        if (TakeIgnoringCase(ref cursor, "B"))
        {
            // The international Bb means the same note; a longer run of flats counts from H.
            note = new(Letter.B, -1);
            return cursor.Current is not ('b' or '♭') || ReadSigns(ref cursor, Letter.B, out note);
        }

        var letter = "CDEFGAH".IndexOf(char.ToUpperInvariant(cursor.Current), StringComparison.Ordinal);
        if (letter < 0)
        {
            return cursor.Fail("a letter from A to H (B is B flat)");
        }

        cursor.Position++;
        var (start, alteration) = (cursor.Position, 0);
        while (TakeIgnoringCase(ref cursor, "is"))
        {
            alteration++;
        }

        if (alteration == 0)
        {
            var contracts = (Letter)letter is Letter.E or Letter.A;
            while (
                (contracts && alteration == 0 && TakeIgnoringCase(ref cursor, "s"))
                || TakeIgnoringCase(ref cursor, "es")
                || ((Letter)letter == Letter.A && alteration < 0 && TakeIgnoringCase(ref cursor, "as"))
            )
            {
                alteration--;
            }
        }

        if (alteration == 0)
        {
            return ReadSigns(ref cursor, (Letter)letter, out note);
        }

        if (Math.Abs(alteration) > NoteName.MaxAlteration)
        {
            return cursor.Fail(start, $"at most {NoteName.MaxAlteration} times -is or -es");
        }

        note = new((Letter)letter, alteration);
        return true;
    }

    private static void WriteGerman(StringBuilder text, NoteName note, bool printed)
    {
        if (note == new NoteName(Letter.B, -1))
        {
            text.Append('B');
            return;
        }

        text.Append("CDEFGAH"[(int)note.Letter]);
        for (var left = note.Alteration; left > 0; left--)
        {
            text.Append("is");
        }

        for (var left = note.Alteration; left < 0; left++)
        {
            var contracts = note.Letter is Letter.E or Letter.A && left == note.Alteration;
            text.Append(contracts ? "s" : "es");
        }
    }

    private static readonly string[] Syllables = ["Do", "Re", "Mi", "Fa", "Sol", "La", "Si"];

    private static bool ReadSolfege(ref TextCursor cursor, out NoteName note)
    {
        for (var letter = Letter.C; letter <= Letter.B; letter++)
        {
            var accented =
                letter == Letter.D && (TakeIgnoringCase(ref cursor, "Ré") || TakeIgnoringCase(ref cursor, "Re\u0301"));
            if (accented || TakeIgnoringCase(ref cursor, Syllables[(int)letter]))
            {
                return ReadSigns(ref cursor, letter, out note);
            }
        }

        note = default;
        return cursor.Fail("one of Do, Re, Mi, Fa, Sol, La, Si");
    }

    private static void WriteSolfege(StringBuilder text, NoteName note, bool printed)
    {
        text.Append(Syllables[(int)note.Letter]);
        Accidentals.Write(text, note.Alteration, printed);
    }

    private static bool ReadSigns(ref TextCursor cursor, Letter letter, out NoteName note)
    {
        var read = Accidentals.Read(ref cursor, NoteName.MaxAlteration, out var alteration);
        note = read ? new(letter, alteration) : default;
        return read;
    }

    private static bool TakeIgnoringCase(ref TextCursor cursor, string word)
    {
        if (!cursor.Rest.StartsWith(word, StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        cursor.Position += word.Length;
        return true;
    }
}

/// <summary>The naming in which a text is read.</summary>
internal static class NoteNamingOfText
{
    public static NoteNaming Naming(this in TextCursor cursor) => NoteNaming.Of(cursor.Provider);
}

using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Drawing.Paths;

/// <summary>Why a note is there, with the degrees, chords and notes in it as values, so that they are printed and named in the reader's way.</summary>
internal static class ReasonWords
{
    public static Words Of(string reason) => Words.Join(" ", reason.Split(' ').Select(Token));

    private static object Token(string text)
    {
        var word = text.TrimEnd(',', ';', ':', '.');
        var rest = text[word.Length..];
        object? value =
            word.Length == 0 ? null
            : word[0] is 'b' or '#' && Degree.TryParse(word, null, out var degree) ? degree
            : word[0] is >= 'A' and <= 'G' && NoteName.TryParse(word, null, out var note) ? note
            : word[0] is >= 'A' and <= 'G' && Chord.TryParse(word, null, out var chord) && $"{chord}" == word ? chord
            : word[0] is >= 'A' and <= 'G' && Pitch.TryParse(word, null, out var pitch) ? pitch
            : null;
        return value is null ? text
            : rest.Length == 0 ? value
            : Words.Join("", [value, rest]);
    }
}

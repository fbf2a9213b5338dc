using System.Text;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Necks;

public sealed partial class NeckDrawing
{
    /// <summary>What a mark is, for the pointer that rests on it: "G, 3"; null for nothing.</summary>
    internal string? Hint(Mark mark) =>
        (mark.Name?.ToString("P", Naming), mark.Function?.ToString("P")) switch
        {
            (null, var function) => function,
            (var name, null) => name,
            var (name, function) => $"{name}, {function}",
        };

    private string Describe()
    {
        var words = new StringBuilder(512);
        words.Append(
            $"A neck of {Printed.Number(Neck.StringCount)} strings, {Printed.Of(Neck.Tuning, Naming)} from string "
        );
        words.Append($"{Neck.StringCount} to string 1, ");
        words.Append(
            FirstFret == LastFret
                ? $"fret {LastFret}"
                : $"{(FirstFret == 0 ? "open strings" : $"frets {FirstFret}")} to "
        );
        words.Append(
            FirstFret == LastFret ? ""
            : FirstFret == 0 ? $"fret {LastFret}"
            : $"{LastFret}"
        );
        words.Append(Neck.Capo > 0 ? $", capo at fret {Neck.Capo}" : "");
        words.Append(IsLeftHanded ? ", for the left hand: the nut is at the right." : ".");
        foreach (var each in Neck.Tuning.Strings.Index().Where(static each => each.Item.Start > 0))
        {
            words.Append($" String {each.Index + 1} begins at fret {each.Item.Start}.");
        }

        var any = false;
        foreach (
            var onString in Shown.GroupBy(static mark => mark.Position.String).OrderByDescending(static g => g.Key)
        )
        {
            any = true;
            words.Append($" String {onString.Key}: ");
            var next = false;
            foreach (var mark in onString)
            {
                words.Append(next ? "; " : "");
                Describe(words, mark);
                next = true;
            }

            words.Append('.');
        }

        words.Append(any ? "" : " Nothing is marked.");
        foreach (var (band, _) in Lanes)
        {
            words.Append($" {band.Name}: frets {band.Window.First} to {band.Window.Last}.");
        }

        if (!Trail.IsEmpty)
        {
            words.Append($" In order: {string.Join(", ", Trail.Select(Place))}.");
        }

        return words.Append(Remark.Length > 0 ? $" {Remark}" : "").ToString();
    }

    // "string 6 fret 3", "string 6 open".
    internal string Place(Position position) =>
        position.Fret == Neck.OpenFret(position.String)
            ? $"string {position.String} open"
            : $"string {position.String} fret {position.Fret}";

    // "fret 3 is G, the 3, finger 1", "open is E", "fret 5", "fret 7 is the ♭7 (colour tone)".
    private void Describe(StringBuilder words, Mark mark)
    {
        var fret = mark.Position.Fret;
        words.Append(fret == Neck.OpenFret(mark.Position.String) ? "open" : $"fret {fret}");
        var link = " is ";
        if (mark.Name is { } name)
        {
            words.Append(link).Append(name.ToString("P", Naming));
            link = ", ";
        }

        if (mark.Function is { } function)
        {
            words.Append(link).Append("the ").Append(function.ToString("P"));
        }

        var byFunction = mark.Function is { } own ? ToneRoles.Of(own) : ToneRole.Other;
        words.Append(mark.Role == byFunction ? "" : $" ({ToneRoles.Words(mark.Role)})");
        words.Append(
            mark.Finger is { } finger
                ? finger == 0
                    ? ", thumb"
                    : $", finger {finger}"
                : ""
        );
        words.Append(mark.Label is { } label ? $", labelled {label}" : "");
        words.Append(mark.IsPale ? ", small" : "");
    }
}

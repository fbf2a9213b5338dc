using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using Fractions;
using TheoryKit.Licks.Tab;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Licks;

public sealed partial record Lick : ISpanParsable<Lick>
{
    internal const string What = "a lick";

    // Read from a text: how that was laid out, so that what has not been changed is written as it was.
    private Source? source;

    /// <summary>A header that says something of its own: how it is written (null for not at all), and whether the tab says it too.</summary>
    private sealed record Header(string Name, Func<Lick, string?> Write, bool IsInTab = false);

    /// <summary>A line of headers: the name of one that says something of its own, or the player's own; and as it stands, with its end.</summary>
    private sealed record HeaderLine(string? Known, LickHeader? Own, string Raw)
    {
        public string End => Raw[Raw.TrimEnd('\r', '\n').Length..];
    }

    private sealed record Source(Lick Lick, IReadOnlyList<HeaderLine> Lines, string Separator, string Body)
    {
        /// <summary>How its lines end.</summary>
        public string LineEnd => Lines.Count > 0 && Lines[0].End.Length > 0 ? Lines[0].End : "\n";
    }

    /// <summary>What headers say before the tab is read.</summary>
    private sealed class Draft
    {
        public string? Name { get; set; }
        public string Tune { get; set; } = "";
        public double? Tempo { get; set; }
        public Swing Swing { get; set; }
        public IReadOnlyList<string> Tags { get; set; } = [];
        public Changes? Changes { get; set; }
        public TimeSignature? Time { get; set; }
        public Neck? Neck { get; set; }
        public Fraction? Beats { get; set; }
        public List<LickHeader> Headers { get; } = [];
    }

    // In the order in which they are written.
    private static readonly Header[] Known =
    [
        new("name", static lick => lick.Name),
        new("tune", static lick => lick.Tune is { Length: > 0 } tune ? tune : null),
        new("changes", static lick => lick.Path.Changes?.ToString()),
        new(
            "time",
            static lick =>
                lick.Path.Changes is null && lick.Path.Time != TimeSignature.Common ? lick.Path.Time.ToString() : null
        ),
        new("tempo", static lick => lick.Tempo?.ToString(CultureInfo.InvariantCulture)),
        new("swing", static lick => lick.Swing == Swing.Straight ? null : lick.Swing.ToString()),
        new("neck", static lick => lick.Path.Neck == Neck.Guitar ? null : lick.Path.Neck.ToString()),
        new("beats", static _ => null, IsInTab: true),
        new("tags", static lick => lick.Tags.Count == 0 ? null : string.Join(", ", lick.Tags)),
    ];

    /// <summary>Whether a header line of that name says something of its own.</summary>
    internal static bool IsKnownHeader(string name) =>
        name.Equals("tuning", StringComparison.OrdinalIgnoreCase)
        || Known.Any(header => header.Name.Equals(name, StringComparison.OrdinalIgnoreCase));

    /// <summary>
    /// The lick as <see cref="Parse(string, IFormatProvider?)"/> reads it. Of a lick that was read from a text, everything that has
    /// not been changed since stands as it did there.
    /// </summary>
    public override string ToString() => Write(null);

    /// <summary>
    /// The lick as <see cref="Read(string, string?, IFormatProvider?)"/> reads it for that name: a text that had no name of its own gets
    /// none where that is the lick's.
    /// </summary>
    internal string Write(string? nameless)
    {
        var text = new StringBuilder(1024);
        var keepsTab = source is not null && source.Lick.Path.Equals(Path) && source.Lick.Words == Words;
        WriteHeaders(text, keepsTab, nameless);
        if (keepsTab)
        {
            var separator = source!.Separator;
            text.Append(separator.Length == 0 && text.Length > 0 ? source.LineEnd : separator);
            return text.Append(source.Body).ToString();
        }

        text.Append('\n');
        if (Words.Length > 0)
        {
            foreach (var line in Words.Split('\n'))
            {
                text.Append(line.Length > 0 ? $"# {line}" : "#").Append('\n');
            }

            text.Append('\n');
        }

        return text.Append(PlainTab.Write(Path)).Append('\n').ToString();
    }

    private void WriteHeaders(StringBuilder text, bool keepsTab, string? nameless)
    {
        var lines = source?.Lines ?? [];
        var lineEnd = source?.LineEnd ?? "\n";
        var written = new HashSet<string>(StringComparer.Ordinal) { Known[0].Name };
        if (lines.All(static line => line.Known != Known[0].Name) && (source is null || Name != nameless))
        {
            text.Append(CultureInfo.InvariantCulture, $"{Known[0].Name}: {Name}{lineEnd}");
        }

        var next = 0;
        foreach (var line in lines)
        {
            if (line.Own is { } own)
            {
                WriteOwn(text, own, line.Raw, lineEnd, ref next);
                continue;
            }

            var header = Known.First(header => header.Name == line.Known);
            written.Add(header.Name);
            var value = header.Write(this);
            if (header.IsInTab ? keepsTab : value == header.Write(source!.Lick))
            {
                text.Append(line.Raw);
            }
            else if (value is not null)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"{header.Name}: {value}{(line.End.Length > 0 ? line.End : lineEnd)}"
                );
            }
        }

        foreach (var header in Known.Where(header => !written.Contains(header.Name)))
        {
            // A tab that is written anew does not say any more what the old one did.
            var value = header.Write(this);
            if (value is not null && (source is null || !keepsTab || value != header.Write(source.Lick)))
            {
                text.Append(CultureInfo.InvariantCulture, $"{header.Name}: {value}{lineEnd}");
            }
        }

        for (; next < Headers.Count; next++)
        {
            text.Append(Headers[next]).Append(lineEnd);
        }
    }

    /// <summary>Keeps the line of a header of the player's own, after those that now stand before it; drops it if it is gone.</summary>
    private void WriteOwn(StringBuilder text, LickHeader own, string raw, string lineEnd, ref int next)
    {
        var at = next;
        while (at < Headers.Count && Headers[at] != own)
        {
            at++;
        }

        if (at == Headers.Count)
        {
            return;
        }

        for (; next < at; next++)
        {
            text.Append(Headers[next]).Append(lineEnd);
        }

        text.Append(raw);
        next++;
    }

    /// <summary>Reads a lick.</summary>
    /// <remarks>
    /// First header lines up to an empty line: <c>name</c> (which has to be there), <c>tune</c>, <c>changes</c>, <c>time</c>, <c>tempo</c>,
    /// <c>swing</c>, <c>neck</c> or <c>tuning</c>, <c>beats</c> (how long it lasts where it does not end with a bar), <c>tags</c> with commas
    /// between; each at most once, in any order and case. Other names are the player's own. Then tab as <see cref="PlainTab.Read"/> takes
    /// it, and words: lines that begin with #, and those that are no tab.
    /// </remarks>
    /// <exception cref="PlacedFormatException">The text is not a lick; the message shows the line and says what would have worked.</exception>
    public static Lick Parse(string s, IFormatProvider? provider = null)
    {
        ArgumentNullException.ThrowIfNull(s);
        return Read(s, null, provider);
    }

    /// <inheritdoc cref="Parse(string, IFormatProvider?)"/>
    public static Lick Parse(ReadOnlySpan<char> s, IFormatProvider? provider = null) =>
        Read(s.ToString(), null, provider);

    /// <summary>Reads a lick if the text is one.</summary>
    public static bool TryParse(
        [NotNullWhen(true)] string? s,
        IFormatProvider? provider,
        [MaybeNullWhen(false)] out Lick result
    )
    {
        try
        {
            result = s is null ? null : Read(s, null, provider);
            return result is not null;
        }
        catch (PlacedFormatException)
        {
            result = null;
            return false;
        }
    }

    /// <inheritdoc cref="TryParse(string, IFormatProvider?, out Lick)"/>
    public static bool TryParse(
        ReadOnlySpan<char> s,
        IFormatProvider? provider,
        [MaybeNullWhen(false)] out Lick result
    ) => TryParse(s.ToString(), provider, out result);

    /// <summary>Reads a lick that may go without a name of its own.</summary>
    /// <param name="text">The text.</param>
    /// <param name="nameless">Its name where the text has none; null if it must have one.</param>
    /// <param name="provider">A <see cref="NoteNaming"/> for note names other than English ones.</param>
    internal static Lick Read(string text, string? nameless, IFormatProvider? provider) =>
        Read(text, nameless, provider, out _);

    internal static Lick Read(
        string text,
        string? nameless,
        IFormatProvider? provider,
        out IReadOnlyList<TabRemark> remarks
    )
    {
        var draft = new Draft();
        var lines = new List<HeaderLine>();
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        var (at, number, separator) = (0, 0, "");
        while (at < text.Length)
        {
            var end = text.IndexOf('\n', at);
            var next = end < 0 ? text.Length : end + 1;
            var raw = text[at..next];
            var line = raw.TrimEnd('\r', '\n');
            number++;
            if (string.IsNullOrWhiteSpace(line))
            {
                (at, separator) = (next, raw);
                break;
            }

            var colon = line.IndexOf(':', StringComparison.Ordinal);
            if (colon < 0 || !LickHeader.IsName(line.AsSpan(0, colon).Trim()))
            {
                if (lines.Count == 0 && nameless is not null && !HasKnownHeader(text.AsSpan(next)))
                {
                    // No header at all: the text is tab alone.
                    number--;
                    break;
                }

                throw PlacedFormatException.WithCaret(
                    What,
                    number,
                    line,
                    1,
                    Math.Max(1, line.Length),
                    "a header line (a name, a colon, what it says), or an empty line before the tab"
                );
            }

            lines.Add(ReadHeader(draft, places, line, colon, number, provider) with { Raw = raw });
            at = next;
        }

        var name = draft.Name ?? nameless;
        if (string.IsNullOrEmpty(name))
        {
            throw PlacedFormatException.WithCaret(
                What,
                1,
                lines.Count > 0 ? lines[0].Raw.TrimEnd('\r', '\n') : "",
                1,
                1,
                "a header line \"name: …\""
            );
        }

        Agree(draft, places, lines, provider);
        var body = text[at..];
        var reading = PlainTab.Read(
            body,
            new()
            {
                Neck = draft.Neck,
                Changes = draft.Changes,
                Time = draft.Time,
                FirstLine = at == text.Length && !text.EndsWith('\n') ? Math.Max(1, number) : number + 1,
            }
        );
        remarks = reading.Remarks;
        try
        {
            var lick = new Lick
            {
                Name = name,
                Path = draft.Beats is { } beats ? reading.Path.With(beats: beats) : reading.Path,
                Tune = draft.Tune,
                Tempo = draft.Tempo,
                Swing = draft.Swing,
                Tags = draft.Tags,
                Headers = draft.Headers,
                Words = reading.Words,
            };
            lick.source = new(lick with { }, lines, separator, body);
            return lick;
        }
        catch (ArgumentException exception)
        {
            throw Misfit(places.GetValueOrDefault("beats", 1), lines, exception.Message);
        }
    }

    /// <summary>Whether there is a header that says something of its own before the next empty line.</summary>
    private static bool HasKnownHeader(ReadOnlySpan<char> text)
    {
        foreach (var line in text.EnumerateLines())
        {
            if (line.IsWhiteSpace())
            {
                return false;
            }

            if (line.IndexOf(':') is > 0 and var colon && IsKnownHeader(line[..colon].Trim().ToString()))
            {
                return true;
            }
        }

        return false;
    }

    private static PlacedFormatException Misfit(int line, List<HeaderLine> lines, string words)
    {
        var text = lines.Count >= line ? lines[line - 1].Raw.TrimEnd('\r', '\n') : "";
        return PlacedFormatException.WithCaret(
            What,
            line,
            text,
            1,
            Math.Max(1, text.Length),
            $"what fits together: {words}"
        );
    }

    /// <summary>Changes that do not say their time are in that of the header.</summary>
    private static void Agree(
        Draft draft,
        Dictionary<string, int> places,
        List<HeaderLine> lines,
        IFormatProvider? provider
    )
    {
        if (draft.Time is not { } time || draft.Changes is not { } changes || changes.Time == time)
        {
            return;
        }

        var raw = lines[places["changes"] - 1].Raw;
        var written = raw[(raw.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim();
        draft.Changes =
            Changes.TryParse($"{time}, {written}", provider, out var timed)
            || Changes.TryParse($"{time}: {written}", provider, out timed)
                ? timed
                : throw Misfit(places["time"], lines, $"the changes are in {changes.Time}.");
    }

    private static HeaderLine ReadHeader(
        Draft draft,
        Dictionary<string, int> places,
        string line,
        int colon,
        int number,
        IFormatProvider? provider
    )
    {
        var written = line[..colon].Trim();
        var name = written.ToLowerInvariant();
        name = name == "tuning" ? "neck" : name;
        var from = colon + 1;
        while (from < line.Length && char.IsWhiteSpace(line[from]))
        {
            from++;
        }

        var value = line[from..].TrimEnd();
        if (!LickText.IsLine(value))
        {
            throw Wrong("text without control characters or halves of characters");
        }

        if (!IsKnownHeader(name))
        {
            draft.Headers.Add(new(written, value));
            return new(null, draft.Headers[^1], "");
        }

        if (!places.TryAdd(name, number))
        {
            throw Wrong($"\"{name}\" only once; line {places[name]} says it already");
        }

        switch (name)
        {
            case "name":
                draft.Name = value.Length > 0 ? value : throw Wrong("a name");
                break;
            case "tune":
                draft.Tune = value;
                break;
            case "changes":
                draft.Changes = Parsed<Changes>();
                break;
            case "time":
                draft.Time = Parsed<TimeSignature>();
                break;
            case "tempo":
                draft.Tempo =
                    double.TryParse(value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var tempo)
                    && tempo is >= 0.01 and <= MaxTempo
                        ? tempo
                        : throw Wrong($"beats a minute, a number up to {MaxTempo}");
                break;
            case "swing":
                draft.Swing = Parsed<Swing>();
                break;
            case "neck":
                draft.Neck = Parsed<Neck>();
                break;
            case "beats":
                draft.Beats = ReadBeats(value) ?? throw Wrong("how many beats it lasts, as 7 or 7/2");
                break;
            default:
                draft.Tags =
                [
                    .. value
                        .Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                        .Distinct(StringComparer.Ordinal),
                ];
                break;
        }

        return new(name, null, "");

        T Parsed<T>()
            where T : IParsable<T>
        {
            try
            {
                return T.Parse(value, provider);
            }
            catch (PlacedFormatException exception)
            {
                // The message of the value's own reader, at its place in the line.
                throw PlacedFormatException.WithCaret(
                    What,
                    number,
                    line,
                    from + exception.Column,
                    exception.Length,
                    $"another \"{name}\": {exception.Message.TrimEnd('.')}"
                );
            }
        }

        PlacedFormatException Wrong(string expected) =>
            PlacedFormatException.WithCaret(What, number, line, from + 1, Math.Max(1, value.Length), expected);
    }

    private static Fraction? ReadBeats(ReadOnlySpan<char> value)
    {
        var slash = value.IndexOf('/');
        var whole = slash < 0 ? value : value[..slash];
        var part = 1;
        return
            int.TryParse(whole, NumberStyles.None, CultureInfo.InvariantCulture, out var beats)
            && (
                slash < 0
                || int.TryParse(value[(slash + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out part)
            )
            && part > 0
            ? new Fraction(beats, part).Reduce()
            : null;
    }
}

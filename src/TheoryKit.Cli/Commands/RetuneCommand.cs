using System.ComponentModel;
using System.Globalization;
using Spectre.Console;
using Spectre.Console.Cli;
using TheoryKit.Cli.Answers;
using TheoryKit.Drawing;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Values;

namespace TheoryKit.Cli.Commands;

/// <summary>Searches for the tuning in which a tune is easiest to hold.</summary>
internal sealed class RetuneCommand(IAnsiConsole console, TextWriter errors) : Command<RetuneCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        TuningAnswer answer;
        try
        {
            answer = Search(settings.Query(), cancellationToken);
        }
        catch (Exception e) when (e is FormatException or ArgumentException)
        {
            errors.WriteLine(Message(e));
            return ExitStatus.BadRequest;
        }

        console.Profile.Out.Writer.WriteLine(DrawingRenderers.All.Text(answer));
        return 0;
    }

    private TuningAnswer Search(TuningQuery query, CancellationToken cancellation)
    {
        if (!console.Profile.Capabilities.Interactive || !console.Profile.Out.IsTerminal)
        {
            return TuningSearch.Find(query, new Lines(console.Profile.Out.Writer), cancellation: cancellation);
        }

        return console
            .Progress()
            .AutoClear(true)
            .Columns(
                new TaskDescriptionColumn { Alignment = Justify.Left },
                new ProgressBarColumn(),
                new PercentageColumn(),
                new ElapsedTimeColumn()
            )
            .Start(progress =>
                TuningSearch.Find(query, new Bar(progress.AddTask("Searching")), cancellation: cancellation)
            );
    }

    /// <summary>What is wrong, with the option instead of the parameter that it went to.</summary>
    private static string Message(Exception exception)
    {
        if (exception is not ArgumentException { ParamName: { } name })
        {
            return exception.Message;
        }

        var message = exception
            .Message.ReplaceLineEndings("\n")
            .Split('\n')[0]
            .Replace($" (Parameter '{name}')", "", StringComparison.Ordinal);
        return Options.TryGetValue(name, out var option) ? $"{option}: {message}" : message;
    }

    private static readonly Dictionary<string, string> Options = new(StringComparer.Ordinal)
    {
        ["scaleLength"] = "--scale",
        ["frets"] = "--frets",
        ["capo"] = "--capo",
        [nameof(TuningQuery.Within)] = "--within",
        [nameof(TuningQuery.Best)] = "--best",
        [nameof(GripLimits.MinSounding)] = "--min-sounding",
        [nameof(GripLimits.LastFret)] = "--last-fret",
        ["number"] = "--keep",
        ["strings"] = "--at-most",
        [nameof(TuningQuery.Strings)] = "--strings",
    };

    /// <summary>"15,625": the same everywhere.</summary>
    private static string Count(long count) => count.ToString("N0", CultureInfo.InvariantCulture);

    /// <summary>A bar on a terminal.</summary>
    private sealed class Bar(ProgressTask task) : IProgress<TuningProgress>
    {
        public void Report(TuningProgress value)
        {
            task.Value = value.Part * 100;
            task.Description = Markup.Escape(
                value.Best is { } best
                    ? $"{Count(value.Space)} tunings, so far {best}"
                    : $"{Count(value.Space)} tunings"
            );
        }
    }

    /// <summary>A line for every tenth where the output goes elsewhere.</summary>
    private sealed class Lines(TextWriter writer) : IProgress<TuningProgress>
    {
        private int tenth;

        public void Report(TuningProgress value)
        {
            var now = (int)(value.Part * 10);
            if (now > tenth)
            {
                tenth = now;
                writer.WriteLine($"{Count(value.Decided)} of {Count(value.Space)} tunings");
            }
        }
    }

    /// <summary>The options of <c>retune</c>.</summary>
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<CHORDS>")]
        [Description(
            "The chords, such as [bold]\"Gm9 C13 Fmaj9\"[/], or changes with bars, such as [bold]\"Gm9 | C13 | Fmaj9 | %\"[/], which count by their beats."
        )]
        public required string Chords { get; init; }

        [CommandOption("-t|--tuning <TUNING>")]
        [Description("Where the strings are tuned now: a name or pitches, such as [bold]\"D2 A2 D3 G3 A3 D4\"[/].")]
        [DefaultValue("Standard")]
        public string Tuning { get; init; } = "Standard";

        [CommandOption("--scale <MM>")]
        [Description("The scale length in mm.")]
        [DefaultValue(Neck.DefaultScaleLength)]
        public double Scale { get; init; } = Neck.DefaultScaleLength;

        [CommandOption("--frets <COUNT>")]
        [Description("How many frets the neck has.")]
        [DefaultValue(Neck.DefaultFrets)]
        public int Frets { get; init; } = Neck.DefaultFrets;

        [CommandOption("--capo <FRET>")]
        [Description("Where a capo sits; 0 for none.")]
        public int Capo { get; init; }

        [CommandOption("-w|--within <SEMITONES>")]
        [Description("By how many semitones a string is retuned at most, either way.")]
        [DefaultValue(2)]
        public int Within { get; init; } = 2;

        [CommandOption("-b|--best <COUNT>")]
        [Description("How many tunings to list.")]
        [DefaultValue(5)]
        public int Best { get; init; } = 5;

        [CommandOption("--hand <HAND>")]
        [Description("[bold]small[/], [bold]average[/], [bold]large[/], or one's own as the library writes it.")]
        [DefaultValue("average")]
        public string Hand { get; init; } = "average";

        [CommandOption("--min-sounding <COUNT>")]
        [Description("The fewest strings that sound in a grip.")]
        [DefaultValue(3)]
        public int MinSounding { get; init; } = 3;

        [CommandOption("--last-fret <FRET>")]
        [Description("The highest fret that is held.")]
        public int? LastFret { get; init; }

        [CommandOption("-s|--strings <SET>")]
        [Description(
            "The strings fitted, by name or gauge by gauge: then only tunings count in which every string is within its limits of tension. Without it tension is not looked at."
        )]
        public string? Strings { get; init; }

        [CommandOption("--tension <LIMITS>")]
        [Description(
            "Between which tensions the strings of [bold]--strings[/] have to be, such as [bold]\"120 N to 260 N\"[/]; usually what suits the instrument."
        )]
        public string? Tension { get; init; }

        [CommandOption("--drone <NOTE>")]
        [Description("An open string has to sound this note.")]
        public string? Drone { get; init; }

        [CommandOption("--open-chord <CHORD>")]
        [Description("The open strings have to sound this chord.")]
        public string? OpenChord { get; init; }

        [CommandOption("--different")]
        [Description("No two strings alike.")]
        public bool Different { get; init; }

        [CommandOption("--rising")]
        [Description("Each string higher than the one before.")]
        public bool Rising { get; init; }

        [CommandOption("--keep <STRINGS>")]
        [Description("Strings that stay as they are, such as [bold]1,2[/].")]
        public string? Keep { get; init; }

        [CommandOption("--at-most <COUNT>")]
        [Description("How many strings are retuned at most.")]
        public int? AtMost { get; init; }

        /// <summary>What is asked.</summary>
        /// <exception cref="FormatException">A text is not what it should be.</exception>
        /// <exception cref="ArgumentException">A number is out of range.</exception>
        public TuningQuery Query() =>
            Tension is null ? Asked()
            : Strings is null
                ? throw new FormatException("--tension is for the strings fitted: name them with --strings too.")
            : Asked() with { TensionLimits = TensionLimits.Parse(Tension) };

        private TuningQuery Asked()
        {
            var tuned = Tuned();
            return new()
            {
                Base = new(tuned, Scale, Frets, Capo),
                Chords = Chords.Contains('|', StringComparison.Ordinal)
                    ? WeightedChord.Of(Changes.Parse(Chords))
                    : WeightedChord.Of(Listed()),
                Within = Within,
                Best = Best,
                Hand = TheoryKit.Fingering.Hands.Hand.Parse(Hand),
                Limits = new() { MinSounding = MinSounding, LastFret = LastFret },
                Strings = Fitted(),
                Requirements = [.. Requirements(tuned.StringCount)],
            };
        }

        private Tuning Tuned()
        {
            try
            {
                return TheoryKit.Tunings.Necks.Tuning.Find(Tuning) ?? TheoryKit.Tunings.Necks.Tuning.Parse(Tuning);
            }
            catch (FormatException e)
            {
                throw new FormatException(
                    $"--tuning: {e.Message} {NearNames.Said(Tuning, TheoryKit.Tunings.Necks.Tuning.Known.Select(static each => each.Name))}",
                    e
                );
            }
        }

        private StringSet? Fitted()
        {
            try
            {
                return Strings is null ? null : StringSet.Find(Strings) ?? StringSet.Parse(Strings);
            }
            catch (FormatException e)
            {
                throw new FormatException(
                    $"--strings: {e.Message} {NearNames.Said(Strings!, StringSet.Known.Select(static each => each.Name))}",
                    e
                );
            }
        }

        /// <summary>The chords of a list; where no chord is to sound there is none.</summary>
        private IReadOnlyList<Chord> Listed()
        {
            var sounding = Chords
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)
                .Where(static word => word.TrimEnd(',') is not ("N.C." or "NC"))
                .ToList();
            return sounding.Count == 0 && !string.IsNullOrWhiteSpace(Chords)
                ? []
                : Chord.ParseList(string.Join(' ', sounding));
        }

        private IEnumerable<TuningRequirement> Requirements(int strings)
        {
            if (Drone is not null)
            {
                yield return TuningRequirement.Drone(NoteName.Parse(Drone));
            }

            if (OpenChord is not null)
            {
                yield return TuningRequirement.OpenChord(Chord.Parse(OpenChord));
            }

            if (Different)
            {
                yield return TuningRequirement.NoTwoAlike;
            }

            if (Rising)
            {
                yield return TuningRequirement.Rising;
            }

            foreach (var text in Keep?.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries) ?? [])
            {
                if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
                {
                    throw new FormatException(
                        $"\"{text}\" in --keep is no number of a string; several are written 1,2."
                    );
                }

                yield return number >= 1 && number <= strings
                    ? TuningRequirement.Keeps(number)
                    : throw new FormatException(
                        $"--keep: String {number} is to stay, but the neck has strings 1 to {strings}."
                    );
            }

            if (AtMost is { } most)
            {
                yield return TuningRequirement.AtMostRetuned(most);
            }
        }
    }
}

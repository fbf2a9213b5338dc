using System.Globalization;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Licks.Search;

public abstract partial record LickCriterion
{
    /// <summary>A chord that it is played over, over any bass unless the chord asked for has one of its own.</summary>
    /// <param name="Chord">The chord.</param>
    public sealed partial record OverChord(Chord Chord) : LickCriterion
    {
        /// <inheritdoc/>
        public override string Key => "chord";

        /// <inheritdoc/>
        public override string Value => Chord.ToString();

        internal override double? Score(LickFacts facts) => facts.Chords.Any(Is) ? 1 : null;

        internal override FoundReason Reason(LickFacts facts) => new FoundReason.OverChord(facts.Chords.First(Is));

        private bool Is(Chord chord) =>
            chord.Root == Chord.Root
            && chord.Formula == Chord.Formula
            && (Chord.Bass == Chord.Root || chord.Bass == Chord.Bass);
    }

    /// <summary>A quality of a chord that it is played over.</summary>
    /// <param name="Formula">The quality's degrees, at least one.</param>
    public sealed partial record OverQuality(Formula Formula) : LickCriterion
    {
        /// <summary>The formula of the chord.</summary>
        /// <exception cref="ArgumentException">It has no tone.</exception>
        public Formula Formula
        {
            get;
            init => field = Some(value, nameof(Formula));
        } = Some(Formula, nameof(Formula));

        /// <inheritdoc/>
        public override string Key => "chord";

        /// <inheritdoc/>
        // What stands after a root that needs no accidental; the major triad, where nothing does, has its long name.
        public override string Value =>
            new Chord(default, Formula).ToString()[1..] is { Length: > 0 } symbol ? symbol : "maj";

        internal override double? Score(LickFacts facts) => facts.Chords.Any(Is) ? 1 : null;

        internal override FoundReason Reason(LickFacts facts) => new FoundReason.OverChord(facts.Chords.First(Is));

        private static Formula Some(Formula formula, string name) =>
            formula.Count > 0 ? formula : throw new ArgumentException("A chord has at least one tone.", name);

        private bool Is(Chord chord) => chord.Formula == Formula;
    }

    /// <summary>A tag that it has.</summary>
    public sealed partial record Tagged : LickCriterion
    {
        /// <summary>A tag.</summary>
        /// <exception cref="ArgumentException">It is empty or not one line of text.</exception>
        public Tagged(string tag) => Tag = Said(tag, nameof(tag));

        /// <summary>The tag.</summary>
        public string Tag { get; }

        /// <inheritdoc/>
        public override string Key => "tag";

        /// <inheritdoc/>
        public override string Value => Tag;

        internal override double? Score(LickFacts facts) => facts.Lick.Tags.Any(Is) ? 1 : null;

        internal override FoundReason Reason(LickFacts facts) => new FoundReason.Tagged(facts.Lick.Tags.First(Is));

        private bool Is(string tag) => tag.Equals(Tag, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The tune that it belongs to, or a part of its name.</summary>
    public sealed partial record OfTune : LickCriterion
    {
        /// <summary>A tune.</summary>
        /// <exception cref="ArgumentException">It is empty or not one line of text.</exception>
        public OfTune(string tune) => Tune = Said(tune, nameof(tune));

        /// <summary>The tune.</summary>
        public string Tune { get; }

        /// <inheritdoc/>
        public override string Key => "tune";

        /// <inheritdoc/>
        public override string Value => Tune;

        internal override double? Score(LickFacts facts) =>
            Holds(facts.Lick.Tune, Tune) ? (facts.Lick.Tune.Length == Tune.Length ? 1 : 0.9) : null;

        internal override FoundReason Reason(LickFacts facts) => new FoundReason.OfTune(facts.Lick.Tune);
    }

    /// <summary>What can be counted.</summary>
    public enum Countable
    {
        /// <summary>Beats a minute.</summary>
        Tempo,

        /// <summary>Bars that it begins.</summary>
        Bars,

        /// <summary>Notes that sound: dead ones do not count.</summary>
        Notes,
    }

    /// <summary>A number within a range, its ends included. A lick without tempo has none within any.</summary>
    public sealed partial record Between : LickCriterion
    {
        /// <summary>The highest number: 100,000.</summary>
        public const double Highest = 100_000;

        /// <summary>A range.</summary>
        /// <param name="measure">What is counted.</param>
        /// <param name="least">The least, in hundredths; null for none.</param>
        /// <param name="most">The most, in hundredths; null for none.</param>
        /// <exception cref="ArgumentException">Neither is given, one is negative or beyond <see cref="Highest"/>, or the least is more than the most.</exception>
        public Between(Countable measure, double? least, double? most)
        {
            Measure = Check.Defined(measure);
            Least = least is { } low ? Math.Round(low, 2) : null;
            Most = most is { } high ? Math.Round(high, 2) : null;
            if (!IsRange(Least, Most))
            {
                throw new ArgumentException(
                    $"A range has an end, goes from 0 to {Highest}, and its least is not more than its most.",
                    nameof(least)
                );
            }
        }

        /// <summary>What is counted.</summary>
        public Countable Measure { get; }

        /// <summary>The least; null for none.</summary>
        public double? Least { get; }

        /// <summary>The most; null for none.</summary>
        public double? Most { get; }

        /// <inheritdoc/>
        public override string Key =>
            Measure switch
            {
                Countable.Tempo => "tempo",
                Countable.Bars => "bars",
                _ => "notes",
            };

        /// <inheritdoc/>
        public override string Value => Least == Most ? Text(Least) : $"{Text(Least)}-{Text(Most)}";

        internal static bool IsRange(double? least, double? most) =>
            (least ?? most) is not null
            && (least ?? 0) is >= 0 and <= Highest
            && (most ?? 0) is >= 0 and <= Highest
            && !(least > most);

        internal override double? Score(LickFacts facts)
        {
            var number = Number(facts);
            return number is null || number < Least || number > Most ? null : 1;
        }

        internal override FoundReason Reason(LickFacts facts) => new FoundReason.Counted(Measure, Number(facts)!.Value);

        private static string Text(double? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";

        private double? Number(LickFacts facts) =>
            Measure switch
            {
                Countable.Tempo => facts.Lick.Tempo,
                Countable.Bars => facts.Lick.Path.BarCount,
                _ => facts.Lick.Path.Notes.Count(static note => !note.IsDead),
            };
    }

    /// <summary>Text that stands somewhere in what it says of itself: its name, tune, tags, headers or words.</summary>
    public sealed partial record Saying : LickCriterion
    {
        /// <summary>A text.</summary>
        /// <exception cref="ArgumentException">It is empty or not one line of text.</exception>
        public Saying(string text) => Text = Said(text, nameof(text));

        /// <summary>The text.</summary>
        public string Text { get; }

        /// <inheritdoc/>
        public override string Key => "text";

        /// <inheritdoc/>
        public override string Value => Text;

        internal override double? Score(LickFacts facts) => In(facts)?.Score;

        internal override FoundReason Reason(LickFacts facts)
        {
            var (_, place, header) = In(facts)!.Value;
            return new FoundReason.Saying(Text, place, header);
        }

        private (double Score, TextPlace Place, string? Header)? In(LickFacts facts)
        {
            var lick = facts.Lick;
            return Holds(lick.Name, Text) ? (1, TextPlace.Name, null)
                : Holds(lick.Tune, Text) ? (0.8, TextPlace.Tune, null)
                : lick.Tags.Any(tag => Holds(tag, Text)) ? (0.8, TextPlace.Tags, null)
                : lick.Headers.FirstOrDefault(header => Holds(header.ToString(), Text)) is { } found
                    ? (0.6, TextPlace.Header, found.Name)
                : Holds(lick.Words, Text) ? (0.5, TextPlace.Words, null)
                : null;
        }
    }

    /// <summary>The tuning that it is played in.</summary>
    /// <param name="Tuning">The tuning.</param>
    public sealed partial record InTuning(Tuning Tuning) : LickCriterion
    {
        /// <inheritdoc/>
        public override string Key => "tuning";

        /// <inheritdoc/>
        public override string Value => Tuning.ToString();

        internal override double? Score(LickFacts facts) => facts.Lick.Path.Neck.Tuning == Tuning ? 1 : null;

        internal override FoundReason Reason(LickFacts facts) => new FoundReason.InTuning(Tuning);
    }

    /// <summary>The neck that it is played on, capo and all.</summary>
    /// <param name="Neck">The neck.</param>
    public sealed partial record OnNeck(Neck Neck) : LickCriterion
    {
        /// <inheritdoc/>
        public override string Key => "neck";

        /// <inheritdoc/>
        public override string Value => Neck.ToString();

        internal override double? Score(LickFacts facts) => facts.Lick.Path.Neck == Neck ? 1 : null;

        internal override FoundReason Reason(LickFacts facts) => new FoundReason.OnNeck(Neck);
    }
}

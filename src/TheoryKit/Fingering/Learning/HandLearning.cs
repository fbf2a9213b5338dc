using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Learning;

/// <summary>Learns from lines as a player wrote them which weights of effort that player's hand has.</summary>
/// <remarks>
/// What is learned are the weights of lines; the reaches of the hand and the weights that only grips have stay. The effort
/// of a line is linear in the weights, so this is structured prediction with a linear model and an exact solver: weights
/// are looked for that make each example easier than every other way to play its pitches, by <see cref="HandLearningOptions.Margin"/>
/// for each note in which that differs, and that stay near the hand to start with (looked up: Tsochantaridis, Joachims, Hofmann, Altun,
/// "Large margin methods for structured and interdependent output variables", JMLR 6, 2005, 1453-1484: a round finds for
/// every example the way that most lacks its margin, which the solver finds exactly since the margin is a sum over notes,
/// and the weights are fitted to all ways found so far; it ends when nothing new is found). The places of the hand, and
/// fingers where none are written, are those which the hand learned so far would choose for the example, and are chosen
/// anew until they stay (looked up: Yu, Joachims, "Learning structural SVMs with latent variables", ICML 2009; pages 1169-1176 from memory).
/// <para>First every note counts, because a player with a strong habit plays much that is hard for the hand to start with.
/// But players slip, and tab has errors. So from then on a note of an example that costs <see cref="HandLearningOptions.Slip"/>
/// more than its line would without it is taken for a slip, the costliest first and no more than
/// <see cref="HandLearningOptions.MostSlips"/> of all notes: the hinge becomes a ramp, and what lies far off pulls no further.
/// All of it is gone over again from the hand found, with finer margins, because a coarse margin that can't be met for every
/// example moves the weights away from those that would play all of them right.</para>
/// <para>Effort only compares, so a hand all of whose weights are doubled plays alike: what the examples don't say is
/// settled by keeping the effort of all of them together what it was for the hand to start with. So learned weights of
/// lines stay in proportion to those of grips. No weight moves by more than <see cref="HandLearningOptions.MostChange"/>
/// times, and that comes first where both can't be.</para>
/// <para>From few lines little can be known. Up to <see cref="FewLines"/> of them take turns at being held back (one at a
/// time where there are no more than <see cref="HandLearningOptions.Folds"/>), with the trust in them that was asked for and
/// with less, each without slips and with; the way by which the lines held back are played best is used, of equals the one
/// with more trust, then the one without slips. So how well they then do is a little flattered. And where the hand
/// learned plays the lines held back worse than the hand to start with, that one is kept.</para>
/// <para>No chance is in it: the same examples in the same order give the same hand.</para>
/// </remarks>
public static class HandLearning
{
    /// <summary>Up to how many examples the trust in them is chosen by how well they teach each other: 12.</summary>
    public const int FewLines = 12;

    /// <summary>
    /// The most rounds of one learning: 200. Examples that agree with each other settle long before; of those that contradict each
    /// other the hand found by then is given, and <see cref="LearnedHand.IsSettled"/> is false.
    /// </summary>
    public const int MaxRounds = 200;

    // A slip that costs less is none; a dearer one than the dearest there is has no use.
    private const double LeastSlip = 1e-6;

    // What is tried of the trust in few examples.
    private static readonly double[] PartsOfTrust = [1, 0.25, 0.0625];

    // Which part of a margin may be lacking before another round is worth it.
    private const double Enough = 0.02;

    // How often it is gone over, each time from the hand found so far with a finer margin and more trust.
    private const int Stages = 3;
    private const double Finer = 4;
    private const double Firmer = 2;

    // By how much a slip costs more while there are too many.
    private const double Coarser = 1.25;

    // A weight moves in proportion to its size, but not as if it were less than this part of its usual size.
    private const double Least = 0.1;

    // How often what is not written is chosen anew.
    private const int MostReadings = 6;

    /// <summary>The hand that plays the examples as they are written, as nearly as can be found.</summary>
    /// <param name="examples">Lines with as many fingers as are written, on any necks.</param>
    /// <param name="start">The hand to start with; the average one unless told.</param>
    /// <param name="options">How it is learned.</param>
    /// <param name="cancellation">Ends the learning.</param>
    /// <exception cref="OperationCanceledException">The learning was cancelled.</exception>
    public static LearnedHand Learn(
        IEnumerable<PlayedLine> examples,
        Hand? start = null,
        HandLearningOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        var all = Check.Items(examples).ToList();
        start ??= Hand.Average;
        options ??= HandLearningOptions.Default;
        var before = LineAgreement.Of(all, start);
        var (chosen, turns) = Chosen(all, start, options, before, cancellation);
        var learning = Learning.From(all, start, chosen, cancellation);
        var agreement = new List<HandAgreement>
        {
            new(TriedLines.Examples, before, LineAgreement.Of(all, learning.Hand)),
        };
        if (options.HeldBack.Count > 0)
        {
            agreement.Add(
                new(
                    TriedLines.HeldBack,
                    LineAgreement.Of(options.HeldBack, start),
                    LineAgreement.Of(options.HeldBack, learning.Hand)
                )
            );
        }
        else if (turns is { } after)
        {
            agreement.Add(new(TriedLines.HeldBack, before, after));
        }

        var isKept = agreement[^1].After.Positions < agreement[^1].Before.Positions;
        var hand = isKept ? start : learning.Hand;
        var readers = all.Select(static line => line.Neck)
            .Distinct()
            .ToDictionary(static neck => neck, neck => new LineReader(neck, hand));
        return new(
            start,
            hand,
            EffortWeights
                .Entries.Where((_, at) => learning.Says[at])
                .Select(entry => new LearnedWeight(entry.Name, entry.Get(start.Weights), entry.Get(hand.Weights))),
            agreement,
            all.Select(line => LineDifference.Of(line, readers[line.Neck])).OfType<LineDifference>(),
            learning.Rounds,
            learning.Unplayable,
            learning.Slips,
            chosen,
            isKept,
            learning.IsSettled
        );
    }

    /// <summary>
    /// The way of learning by which the examples teach each other best, and how well they then do; null where they take no
    /// turns.
    /// </summary>
    private static (HandLearningOptions Options, LineAgreement? Turns) Chosen(
        List<PlayedLine> all,
        Hand start,
        HandLearningOptions options,
        LineAgreement before,
        CancellationToken cancellation
    )
    {
        var folds = Math.Min(options.Folds, all.Count);
        var isFew = all.Count <= FewLines;
        if (folds < 2 || (options.HeldBack.Count > 0 && !isFew))
        {
            return (options, null);
        }

        (HandLearningOptions Options, LineAgreement? Turns) best = (options, null);
        foreach (var tried in isFew ? WaysForFew(options) : [options])
        {
            var turns = Enumerable
                .Range(0, folds)
                .Select(fold =>
                    LineAgreement.Of(
                        all.Where((_, index) => index % folds == fold),
                        Learning
                            .From([.. all.Where((_, index) => index % folds != fold)], start, tried, cancellation)
                            .Hand
                    )
                )
                .Aggregate(LineAgreement.Add);
            if (best.Turns is not { } most || Agreeing(turns) > Agreeing(most))
            {
                best = (tried, turns);
            }

            if (Agreeing(turns) == before.Notes + before.Fingered)
            {
                break; // it can't be better
            }
        }

        return best;

        static int Agreeing(LineAgreement agreement) => agreement.Positions + agreement.Fingers;
    }

    /// <summary>With all the trust that was asked for and with less, each without slips and with.</summary>
    private static IEnumerable<HandLearningOptions> WaysForFew(HandLearningOptions options) =>
        PartsOfTrust
            .Select(part => options with { Trust = options.Trust * part })
            .SelectMany(static way => new[] { way with { MostSlips = 0 }, way })
            .Distinct();

    /// <summary>One learning from one set of examples.</summary>
    private sealed class Learning
    {
        private static readonly double[] Usual =
        [
            .. EffortTerms.Of(EffortWeights.Default).Select(static weight => Math.Max(weight, 0.1)),
        ];

        private readonly IReadOnlyList<PlayedLine> examples;
        private readonly HandLearningOptions options;
        private readonly Dictionary<Neck, EffortTerms> terms = [];
        private readonly MarginFit fit;
        private readonly double[] start;
        private readonly double[] least;
        private readonly double[] most;
        private readonly double[][] own; // what there is in each example, as read last
        private double margin;
        private bool anySlips;

        private readonly CancellationToken cancellation;

        private Learning(
            IReadOnlyList<PlayedLine> all,
            Hand hand,
            HandLearningOptions options,
            CancellationToken cancellation
        )
        {
            (Hand, this.options, this.cancellation) = (hand, options, cancellation);
            start = EffortTerms.Of(hand.Weights);
            Says = new bool[start.Length];
            least = [.. start.Select(weight => weight / options.MostChange)];
            most =
            [
                .. start.Zip(
                    Usual,
                    (own, usual) =>
                        Math.Max(
                            own,
                            Math.Min(EffortWeights.MaxWeight, options.MostChange * Math.Max(own, Least * usual))
                        )
                ),
            ];
            fit = new(least, most);
            foreach (var neck in all.Select(static line => line.Neck).Distinct())
            {
                terms[neck] = new(neck, hand);
            }

            examples = [.. all.Where(line => line.Notes.Count > 0 && line.By(hand) is not null)];
            Unplayable = all.Count(static line => line.Notes.Count > 0) - examples.Count;
            own = new double[examples.Count][];
            foreach (var _ in examples)
            {
                fit.Add();
            }
        }

        public Hand Hand { get; private set; }

        /// <summary>By entry of the weights whether any way to play an example has some of it.</summary>
        public bool[] Says { get; }

        public int Rounds { get; private set; }

        public int Unplayable { get; }

        /// <summary>How many notes are taken for slips.</summary>
        public int Slips { get; private set; }

        public bool IsSettled { get; private set; }

        public static Learning From(
            IReadOnlyList<PlayedLine> examples,
            Hand start,
            HandLearningOptions options,
            CancellationToken cancellation
        )
        {
            var learning = new Learning(examples, start, options, cancellation);
            learning.Run();
            return learning;
        }

        private void Run()
        {
            if (examples.Count == 0)
            {
                return;
            }

            GoOver(0);
            anySlips = options.MostSlips > 0 && options.Slip < double.PositiveInfinity;
            for (var stage = 0; stage < Stages; stage++)
            {
                GoOver(stage);
            }
        }

        private void GoOver(int stage)
        {
            margin = options.Margin / Math.Pow(Finer, stage);
            var from = EffortTerms.Of(Hand.Weights);
            fit.Begin(
                from,
                [.. from.Zip(Usual, static (own, usual) => Math.Max(own, Least * usual))],
                margin,
                options.Trust * Math.Pow(Firmer, stage)
            );
            Settle();
            KeepEffort();
        }

        /// <summary>Reads the examples and fits the weights to them in turn, until both stay.</summary>
        private void Settle()
        {
            IsSettled = false;
            var isEnded = false;
            for (var reading = 0; reading < MostReadings; reading++)
            {
                if (!Read() && reading > 0)
                {
                    IsSettled = isEnded;
                    return;
                }

                isEnded = FindRivals();
            }
        }

        /// <summary>Chooses what is not written in the examples; whether any of it is new.</summary>
        private bool Read()
        {
            var readers = Readers();
            var isNew = false;
            var read = Written(readers);
            Slips = 0;
            for (var index = 0; index < examples.Count; index++)
            {
                var (line, written) = (examples[index], read[index]);
                var unlike = LineReader.Unlike(line, written);
                var amounts = Amounts(line, written);
                Slips += unlike;
                if (own[index] is null || !own[index].AsSpan().SequenceEqual(amounts))
                {
                    (own[index], isNew) = (amounts, true);
                    fit.Set(index, amounts, unlike);
                }
            }

            return isNew;
        }

        /// <summary>The examples as they are written, but for what is taken for slips.</summary>
        private FingeredLine[] Written(Dictionary<Neck, LineReader> readers)
        {
            if (!anySlips)
            {
                return [.. examples.Select(line => readers[line.Neck].AsWritten(line)!)];
            }

            var room = (int)(options.MostSlips * examples.Sum(static line => line.Notes.Count));
            var slip = Math.Max(options.Slip / Scale(), LeastSlip);
            var read = examples.Select(line => readers[line.Neck].Placed(line, slip)!).ToArray();
            while (read.Zip(examples, static (played, line) => LineReader.Unlike(line, played)).Sum() > room)
            {
                cancellation.ThrowIfCancellationRequested();

                // The more a slip costs, the fewer there are, so that what has none is not read again.
                slip *= Coarser;
                for (var index = 0; index < read.Length; index++)
                {
                    var line = examples[index];
                    if (LineReader.Unlike(line, read[index]) > 0)
                    {
                        read[index] = readers[line.Neck].Placed(line, slip)!;
                    }
                }
            }

            return read;
        }

        /// <summary>
        /// Adds the ways that lack most, and fits the weights to them; whether that ended because there are no more, and not at the
        /// limit of rounds.
        /// </summary>
        private bool FindRivals()
        {
            fit.Fit();
            Take(fit.Weights);
            for (var round = 0; round < options.Rounds && Rounds < MaxRounds; round++)
            {
                cancellation.ThrowIfCancellationRequested();
                Rounds++;
                var readers = Readers();
                var found = false;
                for (var index = 0; index < examples.Count; index++)
                {
                    var line = examples[index];
                    var rival = readers[line.Neck].Placed(line, -margin)!;
                    var amounts = Amounts(line, rival);
                    var unlike = LineReader.Unlike(line, rival);
                    if (fit.Lacking(index, amounts, unlike) > fit.Lacking(index) + (Enough * margin))
                    {
                        fit.Add(index, amounts, unlike);
                        found = true;
                    }
                }

                if (!found)
                {
                    return true;
                }

                fit.Fit();
                Take(fit.Weights);
            }

            return false;
        }

        /// <summary>Scales what was learned so that all examples together cost what they cost the hand to start with.</summary>
        private void KeepEffort()
        {
            var now = EffortTerms.Of(Hand.Weights);
            var scale = Scale();
            for (var at = 0; at < now.Length; at++)
            {
                if (Says[at] && now[at] > 0)
                {
                    scale = Math.Clamp(scale, Math.Min(1, least[at] / now[at]), Math.Max(1, most[at] / now[at]));
                }
            }

            Take([.. now.Select((weight, at) => Says[at] ? weight * scale : weight)]);
        }

        /// <summary>How many times as much effort the examples are for the hand to start with.</summary>
        private double Scale()
        {
            var now = EffortTerms.Of(Hand.Weights);
            var (before, after) = (0.0, 0.0);
            foreach (var amounts in own)
            {
                for (var at = 0; at < (amounts?.Length ?? 0); at++)
                {
                    before += start[at] * amounts![at];
                    after += now[at] * amounts[at];
                }
            }

            return before > 0 && after > 0 ? before / after : 1;
        }

        private Dictionary<Neck, LineReader> Readers() =>
            terms.Keys.ToDictionary(static neck => neck, neck => new LineReader(neck, Hand));

        private double[] Amounts(PlayedLine line, FingeredLine played)
        {
            var amounts = terms[line.Neck].AmountsIn(played);
            for (var at = 0; at < amounts.Length; at++)
            {
                Says[at] |= amounts[at] > 0;
            }

            return amounts;
        }

        private void Take(double[] weights) =>
            Hand = Hand with
            {
                Weights = EffortWeights
                    .Entries.Select((entry, at) => (entry, weight: weights[at]))
                    .Aggregate(
                        Hand.Weights,
                        static (all, each) => each.entry.With(all, Math.Clamp(each.weight, 0, EffortWeights.MaxWeight))
                    ),
            };
    }
}

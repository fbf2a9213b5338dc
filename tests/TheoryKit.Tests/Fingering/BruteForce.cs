using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering;

/// <summary>
/// What the solvers promise, said once more in the plainest way: distances and effort by their formulas, answers by going
/// through everything there is.
/// </summary>
internal static class BruteForce
{
    public static readonly Finger[] Four = [Finger.Index, Finger.Middle, Finger.Ring, Finger.Little];
    private const double Spacing = 8;

    /// <summary>Where a fingertip sits: 8 mm behind the fret, or half way where the frets are narrower than 16 mm.</summary>
    public static double Tip(Neck neck, int fret)
    {
        double Distance(int n) => neck.ScaleLength - (neck.ScaleLength / Math.Pow(2, n / 12.0));
        var width = Distance(fret) - Distance(fret - 1);
        return width > 16 ? Distance(fret) - 8 : Distance(fret) - (width / 2);
    }

    /// <summary>What two fingertips cost at a distance; infinite out of reach.</summary>
    public static double Spread(Hand hand, Finger one, Finger other, double along, int strings)
    {
        var distance = Math.Sqrt(Math.Pow(along, 2) + Math.Pow(strings * Spacing, 2));
        var reach = hand.Reach(one, other); // the same either way
        if (distance > reach)
        {
            return double.PositiveInfinity;
        }

        var rest = hand.Rest * Math.Abs(one - other);
        return distance < rest ? hand.Weights.Crowding * Math.Pow((rest - distance) / rest, 2)
            : reach > rest ? hand.Weights.Stretch * Math.Pow((distance - rest) / (reach - rest), 3)
            : hand.Weights.Stretch;
    }

    /// <summary>Every fret beyond the fourteenth costs.</summary>
    private static double Upper(EffortWeights weights, int fret) => fret <= 14 ? 0 : (fret - 14) * weights.Upper;

    /// <summary>A way to hold a grip: for each held string its fret and finger.</summary>
    public static double Effort(Neck neck, Hand hand, GripString[] fromFirst)
    {
        var weights = hand.Weights;
        var held = fromFirst
            .Select((each, index) => (Number: index + 1, each.Fret, each.Finger))
            .Where(each => each.Finger is not null)
            .GroupBy(each => each.Finger!.Value)
            .Select(group =>
                (
                    Finger: group.Key,
                    Frets: group.Select(each => each.Fret!.Value).Distinct().ToArray(),
                    Low: group.Min(each => each.Number),
                    High: group.Max(each => each.Number)
                )
            )
            .OrderBy(each => each.Finger)
            .ToArray();
        var effort = 0.0;
        foreach (var (finger, frets, low, high) in held)
        {
            if (
                frets.Length > 1
                || (finger == Finger.Thumb && (high != fromFirst.Length || low != high || !hand.ThumbOver))
            )
            {
                return double.PositiveInfinity;
            }

            effort += weights.Of(finger) + Upper(weights, frets[0]);
            if (low == high)
            {
                continue;
            }

            if (high - low + 1 > (finger == Finger.Index ? hand.BarreStrings : hand.OtherBarreStrings))
            {
                return double.PositiveInfinity;
            }

            for (var number = low; number <= high; number++)
            {
                var between = fromFirst[number - 1];
                if (
                    between.Finger is null
                    || between.Fret < frets[0]
                    || (between.Fret == frets[0] && between.Finger != finger)
                )
                {
                    return double.PositiveInfinity;
                }
            }

            effort +=
                weights.Barre
                + (weights.BarreString * (high - low))
                + (finger == Finger.Index ? 0 : weights.OtherBarre);
        }

        for (var i = 0; i < held.Length; i++)
        {
            for (var j = i + 1; j < held.Length; j++)
            {
                var (one, other) = (held[i], held[j]);
                var along = Math.Abs(Tip(neck, one.Frets[0]) - Tip(neck, other.Frets[0]));
                if (one.Finger == Finger.Thumb)
                {
                    if (along > hand.Reach(one.Finger, other.Finger))
                    {
                        return double.PositiveInfinity;
                    }

                    continue;
                }

                if (one.Frets[0] > other.Frets[0])
                {
                    return double.PositiveInfinity;
                }

                var across = Math.Max(0, Math.Max(one.Low - other.High, other.Low - one.High));
                var spread = Spread(hand, one.Finger, other.Finger, along, across);
                var areNeighbours = j == i + 1;
                effort += areNeighbours || double.IsInfinity(spread) ? spread : 0;
                effort += areNeighbours && one.Frets[0] == other.Frets[0] && one.High < other.High ? weights.Twist : 0;
            }
        }

        var sounding = fromFirst
            .Select((each, index) => (each, index))
            .Where(x => x.each.Sounds)
            .Select(x => x.index)
            .ToArray();
        return sounding.Length == 0
            ? effort
            : effort + (weights.InnerMute * (sounding[^1] - sounding[0] + 1 - sounding.Length));
    }

    /// <summary>The least effort over every function from held strings to fingers.</summary>
    /// <param name="neck">The neck.</param>
    /// <param name="hand">The hand.</param>
    /// <param name="frets">By string, string 1 first: null muted, else the fret.</param>
    /// <param name="maxFingers">The most fingers.</param>
    public static double LeastEffort(Neck neck, Hand hand, int?[] frets, int maxFingers)
    {
        var held = Enumerable
            .Range(0, frets.Length)
            .Where(s => frets[s] is { } fret && fret > neck.OpenFret(s + 1))
            .ToArray();
        var grip = frets.Select((fret, s) => fret is null ? GripString.Muted : GripString.Open(fret.Value)).ToArray();
        var least = double.PositiveInfinity;
        var fingers = new Finger[held.Length];
        Assign(0);
        return least;

        void Assign(int index)
        {
            if (index == held.Length)
            {
                if (fingers.Distinct().Count() > maxFingers)
                {
                    return;
                }

                for (var at = 0; at < held.Length; at++)
                {
                    grip[held[at]] = GripString.Held(frets[held[at]]!.Value, fingers[at]);
                }

                least = Math.Min(least, Effort(neck, hand, grip));
                return;
            }

            for (var finger = Finger.Thumb; finger <= Finger.Little; finger++)
            {
                fingers[index] = finger;
                Assign(index + 1);
            }
        }
    }

    /// <summary>Every grip that a question asks for, by its frets, string 1 first, with its least effort.</summary>
    public static Dictionary<string, double> Grips(GripQuery query)
    {
        var neck = query.Neck;
        var found = new Dictionary<string, double>();
        var frets = new int?[neck.StringCount];
        Choose(0);
        return found;

        void Choose(int index)
        {
            if (index == frets.Length)
            {
                if (
                    Answers(query, frets)
                    && LeastEffort(neck, query.Hand, frets, query.MaxFingers) is var effort
                    && !double.IsInfinity(effort)
                )
                {
                    found.Add(Key(frets), effort);
                }

                return;
            }

            frets[index] = null;
            Choose(index + 1);
            var open = neck.OpenFret(index + 1);
            for (var fret = open; fret <= neck.Frets; fret++)
            {
                if (fret == open || (fret >= query.FirstFret && fret <= (query.LastFret ?? neck.Frets)))
                {
                    frets[index] = fret;
                    Choose(index + 1);
                }
            }
        }
    }

    public static string Key(IEnumerable<int?> frets) =>
        string.Join(' ', frets.Select(fret => fret?.ToString() ?? "x"));

    public static string Key(Grip grip) => Key(grip.Strings.Select(each => each.Fret));

    private static bool Answers(GripQuery query, int?[] frets)
    {
        var neck = query.Neck;
        var sounding = Enumerable
            .Range(0, frets.Length)
            .Where(s => frets[s] is not null)
            .Select(s => (Number: s + 1, Fret: frets[s]!.Value, Midi: neck.MidiNumberAt(new(s + 1, frets[s]!.Value))))
            .ToArray();
        if (sounding.Length < Math.Max(1, query.MinSounding) || sounding.Length > query.MaxSounding)
        {
            return false;
        }

        var isOpen = sounding.Select(s => s.Fret == neck.OpenFret(s.Number)).ToArray();
        if (
            (query.OpenStrings == OpenStrings.None && isOpen.Contains(true))
            || (query.OpenStrings == OpenStrings.Only && isOpen.Contains(false))
        )
        {
            return false;
        }

        var may = query.Strings ?? Enumerable.Range(1, frets.Length).ToHashSet();
        if (
            sounding.Any(s => !may.Contains(s.Number))
            || (query.AllStrings && sounding.Length != may.Count)
            || (!query.InnerMutes && sounding[^1].Number - sounding[0].Number + 1 != sounding.Length)
        )
        {
            return false;
        }

        int Class(int midi) => ((midi % 12) + 12) % 12;
        var chord = query.Chord;
        var optional = query.Optional ?? GripQuery.CommonlyOptional(chord.Formula);
        var tones = chord.Formula.Select(d => Class(chord.Root.PitchClass + d.PitchClass)).ToHashSet();
        var required = chord
            .Formula.Where(d => !optional.Contains(d))
            .Select(d => Class(chord.Root.PitchClass + d.PitchClass));
        var classes = sounding.Select(s => Class(s.Midi)).ToArray();
        var lowest = sounding.Min(s => s.Midi);
        var bass = (query.Bass ?? chord.Bass).PitchClass;
        if (!required.All(classes.Contains) || (query.Top is { } top && sounding.Max(s => s.Midi) != top.MidiNumber))
        {
            return false;
        }

        if (query.AnyBass)
        {
            return classes.All(tones.Contains);
        }

        return Class(lowest) == bass
            && (
                tones.Contains(bass)
                    ? classes.All(tones.Contains)
                    : classes.Count(c => c == bass) == 1 && classes.All(c => c == bass || tones.Contains(c))
            );
    }

    /// <summary>How many mm up the neck the hand is from the first fret that an open string can be held at.</summary>
    private static double Away(Neck neck, FingeredNote note)
    {
        var first = neck.OpenFret(note.Position.String) + 1;
        return note.Place <= first ? 0 : Tip(neck, note.Place) - Tip(neck, first);
    }

    /// <summary>What a note costs by itself with the hand at a place.</summary>
    public static double NoteCost(LineQuery query, FingeredNote note)
    {
        var (neck, hand) = (query.Neck, query.Hand);
        var away = query.PreferredPlace is { } home
            ? hand.Weights.Preference
                * Math.Abs(Tip(neck, note.Place) - Tip(neck, Math.Clamp(home, 1, neck.Frets)))
                / 1000
            : 0;
        return note.Finger switch
        {
            null => away + (hand.Weights.OpenString * Away(neck, note) / 1000),
            Finger.Index => note.Position.Fret == note.Place
                ? hand.Weights.Index + Upper(hand.Weights, note.Position.Fret) + away
                : double.PositiveInfinity,
            { } finger => note.Position.Fret < note.Place
                ? double.PositiveInfinity
                : hand.Weights.Of(finger)
                    + Upper(hand.Weights, note.Position.Fret)
                    + away
                    + Spread(hand, Finger.Index, finger, Tip(neck, note.Position.Fret) - Tip(neck, note.Place), 0),
        };
    }

    /// <summary>What it costs to go from a note to the next.</summary>
    public static double StepCost(LineQuery query, FingeredNote from, FingeredNote to)
    {
        var (neck, hand, weights) = (query.Neck, query.Hand, query.Hand.Weights);
        var crossed = Math.Abs(from.Position.String - to.Position.String);
        var cost = weights.StringCrossing * crossed;
        var shifts = from.Place != to.Place;
        if (shifts)
        {
            cost +=
                weights.Shift + (weights.ShiftDistance * Math.Abs(Tip(neck, from.Place) - Tip(neck, to.Place)) / 1000);
        }

        if (from.Finger is null || to.Finger is null)
        {
            return cost;
        }

        if (from.Finger == to.Finger)
        {
            return cost
                + (
                    from.Position == to.Position ? 0
                    : from.Position.Fret == to.Position.Fret ? weights.Roll
                    : shifts && crossed == 0 ? 0
                    : weights.SameFinger
                );
        }

        if (shifts)
        {
            return cost;
        }

        return !AreInReach(neck, hand, from, to) ? double.PositiveInfinity
            : from.Finger == Finger.Index || to.Finger == Finger.Index ? cost
            : cost
                + Spread(
                    hand,
                    from.Finger.Value,
                    to.Finger.Value,
                    Tip(neck, from.Position.Fret) - Tip(neck, to.Position.Fret),
                    crossed
                );
    }

    /// <summary>Whether two different fingers are in order and within reach.</summary>
    public static bool AreInReach(Neck neck, Hand hand, FingeredNote one, FingeredNote other)
    {
        var (low, high) = one.Finger < other.Finger ? (one, other) : (other, one);
        return low.Position.Fret <= high.Position.Fret
            && !double.IsInfinity(
                Spread(
                    hand,
                    low.Finger!.Value,
                    high.Finger!.Value,
                    Tip(neck, high.Position.Fret) - Tip(neck, low.Position.Fret),
                    Math.Abs(low.Position.String - high.Position.String)
                )
            );
    }

    /// <summary>Whether a note can sound while one before it rings on.</summary>
    public static bool CanRingBeside(LineQuery query, FingeredNote held, FingeredNote note) =>
        held.Position.String != note.Position.String
        && (
            held.Finger is null
            || (
                held.Place == note.Place
                && (
                    note.Finger is null
                    || (
                        held.Finger == note.Finger
                            ? held.Position.Fret == note.Position.Fret
                                && Math.Abs(held.Position.String - note.Position.String) + 1
                                    <= query.Hand.Flat(held.Finger.Value)
                            : AreInReach(query.Neck, query.Hand, held, note)
                    )
                )
            )
        );

    /// <summary>Every way to play a note.</summary>
    public static List<FingeredNote> States(LineQuery query, LineNote note)
    {
        var states = new List<FingeredNote>();
        foreach (var position in note.Positions)
        {
            var isOpen = position.Fret == query.Neck.OpenFret(position.String);
            if (isOpen && !query.OpenStrings && note.Positions.Length > 1)
            {
                continue;
            }

            for (
                var place = Math.Max(query.FirstPlace, query.Neck.Capo + 1);
                place <= Math.Min(query.LastPlace, query.Neck.Frets);
                place++
            )
            {
                foreach (var finger in isOpen ? [null] : Four.Select(finger => (Finger?)finger))
                {
                    var state = new FingeredNote(position, finger, place);
                    if (!double.IsInfinity(NoteCost(query, state)))
                    {
                        states.Add(state);
                    }
                }
            }
        }

        return states;
    }

    /// <summary>Every line by positions and fingers with its least cost; null if there are too many ways to go through.</summary>
    public static Dictionary<string, double>? Lines(LineQuery query, double mostWays = 300_000)
    {
        var states = query.Notes.Select(note => States(query, note)).ToArray();
        if (states.Aggregate(1.0, (product, each) => product * each.Count) > mostWays)
        {
            return null;
        }

        var found = new Dictionary<string, double>();
        var line = new FingeredNote[states.Length];
        Choose(0, 0);
        return found;

        void Choose(int index, double cost)
        {
            if (index == line.Length)
            {
                var key = Key(line);
                found[key] = Math.Min(cost, found.GetValueOrDefault(key, double.PositiveInfinity));
                return;
            }

            foreach (var state in states[index])
            {
                var total = cost + NoteCost(query, state) + (index == 0 ? 0 : StepCost(query, line[index - 1], state));
                var rings = Enumerable
                    .Range(0, index)
                    .All(before =>
                        before + query.Notes[before].Rings < index || CanRingBeside(query, line[before], state)
                    );
                if (rings && !double.IsInfinity(total))
                {
                    line[index] = state;
                    Choose(index + 1, total);
                }
            }
        }
    }

    public static string Key(IEnumerable<FingeredNote> line) =>
        string.Join(' ', line.Select(note => $"{note.Position}/{note.Finger}"));
}

namespace TheoryKit.Fingering.Learning;

/// <summary>
/// The weights that make each example easier than its rivals by their margins, as far as that is possible, and stay near
/// the weights to start with: the quadratic program of a structured support vector machine, solved exactly to a tolerance
/// by dual coordinate ascent.
/// </summary>
/// <remarks>
/// Minimizes ½ Σₖ ((wₖ - startₖ) / scaleₖ)² + trust · Σᵢ ξᵢ over least ≤ w ≤ most and ξ ≥ 0, where for every rival of
/// example i: w · (rival - example) ≥ margin - ξᵢ. The dual has a share for each rival, those of one example at most trust
/// together; given the shares, w is the start moved by them and clipped to its range.
/// </remarks>
internal sealed class MarginFit(double[] least, double[] most)
{
    private const double Tolerance = 1e-4;
    private const int MostPasses = 300;

    private readonly List<Example> examples = [];
    private double[] start = [];
    private double[] scale = [];
    private double[] moved = []; // in units of scale, before clipping
    private double trust;
    private double margin;

    public double[] Weights { get; private set; } = [];

    /// <summary>Begins anew, with the examples and rivals that there are.</summary>
    /// <param name="from">The weights to start with, and to stay near.</param>
    /// <param name="by">What counts as one step away from each; more than 0.</param>
    /// <param name="margin">For each note in which a rival differs.</param>
    /// <param name="trust">How much the examples count.</param>
    public void Begin(double[] from, double[] by, double margin, double trust)
    {
        (start, scale, this.margin, this.trust) = (from, by, margin, trust);
        (Weights, moved) = ([.. from], new double[from.Length]);
        foreach (var example in examples)
        {
            example.Changed();
            example.Rivals.ForEach(static rival => rival.Share = 0);
        }
    }

    public void Add() => examples.Add(new());

    /// <summary>How much is lacking at most for an example, with the rivals it has: ξ.</summary>
    public double Lacking(int example) =>
        examples[example].Rivals.Aggregate(0.0, (most, rival) => Math.Max(most, Lack(examples[example], rival)));

    /// <summary>How much would be lacking for a rival.</summary>
    public double Lacking(int example, double[] amounts, int unlike) => Lack(examples[example], new(amounts, unlike));

    /// <summary>Sets what there is in an example itself, and in how many notes it is taken for a slip.</summary>
    public void Set(int example, double[] amounts, int unlike)
    {
        (examples[example].Amounts, examples[example].Unlike) = (amounts, unlike);
        examples[example].Changed();
    }

    /// <summary>Another way to play an example, and in how many notes it differs.</summary>
    public void Add(int example, double[] amounts, int unlike)
    {
        var rival = new Rival(amounts, unlike);
        examples[example].Rivals.Add(rival);
        Prepare(examples[example], rival);
    }

    /// <summary>Fits the weights to all examples and rivals so far; goes on from the last fit.</summary>
    public void Fit()
    {
        // The shares stay; what they move is summed up anew, because the examples may have changed.
        Array.Clear(moved);
        foreach (var example in examples)
        {
            example.Given = 0;
            foreach (var rival in example.Rivals)
            {
                if (rival.Direction is null)
                {
                    Prepare(example, rival);
                }

                example.Given += rival.Share;
                Move(rival, rival.Share);
            }
        }

        Clip();
        for (var pass = 0; pass < MostPasses; pass++)
        {
            var greatest = 0.0;
            foreach (var example in examples)
            {
                greatest = Math.Max(greatest, Improve(example));
            }

            if (greatest < Tolerance)
            {
                return;
            }
        }
    }

    /// <summary>One step for every rival of an example; returns how far the furthest was from where it should be.</summary>
    private double Improve(Example example)
    {
        var furthest = 0.0;
        foreach (var rival in example.Rivals)
        {
            if (rival.Square == 0)
            {
                continue; // the example itself by another way: no weights part them
            }

            var lack = Lack(example, rival);
            var room = trust - example.Given;
            var step = Math.Clamp(lack / rival.Square, -rival.Share, Math.Max(0, room));
            if (step != 0)
            {
                furthest = Math.Max(furthest, Math.Abs(step) * rival.Square);
                Take(rival, step);
                example.Given += step;
            }

            if (lack <= 0 || room - step > 1e-12)
            {
                continue;
            }

            // All shares are given out: this rival gets some of another that needs it less.
            Rival? poorest = null;
            foreach (var other in example.Rivals)
            {
                if (
                    other != rival
                    && other.Share > 0
                    && (poorest is null || Lack(example, other) < Lack(example, poorest))
                )
                {
                    poorest = other;
                }
            }

            if (poorest is null || Lack(example, rival) - Lack(example, poorest) is var difference && difference <= 0)
            {
                continue;
            }

            var square = 0.0;
            for (var at = 0; at < start.Length; at++)
            {
                var apart = rival.Direction![at] - poorest.Direction![at];
                square += apart * apart;
            }

            var handed = square > 0 ? Math.Min(difference / square, poorest.Share) : poorest.Share;
            if (handed > 0)
            {
                furthest = Math.Max(furthest, handed * square);
                Take(rival, handed);
                Take(poorest, -handed);
            }
        }

        return furthest;
    }

    private double Lack(Example example, Rival rival)
    {
        var lack = margin * (rival.Unlike - example.Unlike);
        for (var at = 0; at < start.Length; at++)
        {
            lack -= Weights[at] * (rival.Amounts[at] - example.Amounts[at]);
        }

        return lack;
    }

    private void Prepare(Example example, Rival rival)
    {
        var direction = new double[start.Length];
        rival.Square = 0;
        for (var at = 0; at < direction.Length; at++)
        {
            direction[at] = scale[at] * (rival.Amounts[at] - example.Amounts[at]);
            rival.Square += direction[at] * direction[at];
        }

        if (rival.Square < 1e-12)
        {
            (rival.Square, rival.Share) = (0, 0);
        }

        rival.Direction = direction;
    }

    private void Take(Rival rival, double share)
    {
        rival.Share = Math.Max(0, rival.Share + share);
        Move(rival, share);
        Clip();
    }

    private void Move(Rival rival, double share)
    {
        for (var at = 0; at < moved.Length; at++)
        {
            moved[at] += share * rival.Direction![at];
        }
    }

    private void Clip()
    {
        for (var at = 0; at < moved.Length; at++)
        {
            Weights[at] = Math.Clamp(start[at] + (scale[at] * moved[at]), least[at], most[at]);
        }
    }

    private sealed class Example
    {
        public double[] Amounts { get; set; } = [];

        public int Unlike { get; set; }

        public List<Rival> Rivals { get; } = [];

        /// <summary>The shares of all rivals together.</summary>
        public double Given { get; set; }

        public void Changed() => Rivals.ForEach(static rival => rival.Direction = null);
    }

    private sealed class Rival(double[] amounts, int unlike)
    {
        public double[] Amounts => amounts;

        public int Unlike => unlike;

        /// <summary>What a share of it adds to the weights, in units of scale; null until it is asked for.</summary>
        public double[]? Direction { get; set; }

        public double Square { get; set; }

        public double Share { get; set; }
    }
}

using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>Where a tab is played.</summary>
/// <param name="Neck">The neck.</param>
/// <param name="Highest">The highest number that is one fret; two digits beyond are two frets.</param>
/// <param name="IsUpsideDown">Whether the thickest string is on top.</param>
/// <param name="Above">How many strings of the neck are thinner than those that are typed.</param>
internal sealed record TabNeck(Neck Neck, int Highest, bool IsUpsideDown, int Above)
{
    /// <summary>The string of the neck, from 1, that a line of so many is, from 0.</summary>
    public int StringOf(int line, int count) => 1 + Above + (IsUpsideDown ? count - 1 - line : line);

    /// <summary>From the names of a system's strings to the neck.</summary>
    public static TabNeck Of(TabSystem system, TabTitle? title, Neck? given, TabRemarks remarks)
    {
        var names = system.Strings.Select(static each => NameOf(each.Label)).ToArray();
        var isUpsideDown = IsTurned(system.Strings, names, given?.Tuning);
        var strings = isUpsideDown ? [.. system.Strings.Reverse()] : system.Strings;
        if (isUpsideDown)
        {
            Array.Reverse(names);
            remarks.Add(system.Strings[0].Line, 0, system.Strings[0].Start, new TabRemark.UpsideDown());
        }

        if (given is not null)
        {
            for (var index = 0; index < names.Length; index++)
            {
                var open = given.Tuning.Strings[index].Open;
                if (names[index] is { } name && name.PitchClass != open.PitchClass)
                {
                    var (line, _, start) = strings[index];
                    remarks.Add(line, 0, Math.Max(1, start), new TabRemark.OtherString(name, index + 1, open));
                    break;
                }
            }

            return new(given, given.Frets, isUpsideDown, 0);
        }

        var above = 0;
        var neck =
            title is not null && title.Tuning.StringCount == names.Length
                ? new Neck(title.Tuning, capo: title.Capo)
                : new Neck(Octaves(strings) ?? Named(names, system.Strings[0], out above, remarks));
        return new(neck, Math.Max(neck.Frets, 24), isUpsideDown, above);
    }

    private static NoteName? NameOf(string? label)
    {
        if (label is null || char.IsAsciiDigit(label[0]))
        {
            return null;
        }

        var name = label.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9');
        return NoteName.TryParse($"{char.ToUpperInvariant(name[0])}{name[1..]}", null, out var read) ? read : null;
    }

    /// <summary>By numbers that fall, by a small e (b, g) at the bottom, or by names that fit only so.</summary>
    private static bool IsTurned(IReadOnlyList<TabString> strings, NoteName?[] names, Tuning? given)
    {
        if (strings.All(static each => each.Label is not null && char.IsAsciiDigit(each.Label[0])))
        {
            return strings[^1].Label == "1";
        }

        if (!Array.TrueForAll(names, static name => name is not null))
        {
            return false;
        }

        var classes = names.Select(static name => name!.Value.PitchClass).ToList();
        var turned = Enumerable.Reverse(classes).ToList();
        if (!Fits(turned))
        {
            return false;
        }

        // Where both fit, a small letter is the thin one of two that are called alike.
        var (top, bottom) = (strings[0].Label![0], strings[^1].Label![0]);
        return !Fits(classes)
            || (
                char.IsAsciiLetterLower(bottom) && char.IsAsciiLetterUpper(top) && char.ToUpperInvariant(bottom) == top
            );

        bool Fits(List<int> called) =>
            given is not null
                ? Is(given, called)
                : Tuning.Known.Any(known => Is(known.Tuning, called))
                    || RunOf([.. called.Select(static each => (int?)each)]) is not null;

        static bool Is(Tuning tuning, List<int> called) =>
            tuning.Strings.Select(static each => each.Open.PitchClass).SequenceEqual(called);
    }

    /// <summary>The tuning where every line is called by a pitch; null if not.</summary>
    private static Tuning? Octaves(IReadOnlyList<TabString> strings)
    {
        var pitches = new List<TuningString>();
        foreach (var (_, label, _) in strings.Reverse())
        {
            if (
                label is null
                || char.IsAsciiDigit(label[0])
                || !char.IsAsciiDigit(label[^1])
                || !TuningString.TryParse($"{char.ToUpperInvariant(label[0])}{label[1..]}", null, out var open)
            )
            {
                return null;
            }

            pitches.Add(open);
        }

        return new(pitches);
    }

    private static Tuning Named(NoteName?[] names, TabString top, out int above, TabRemarks remarks)
    {
        above = 0;
        var sameCount = Tuning.Known.Where(known => known.Tuning.StringCount == names.Length).ToList();
        if (sameCount.Find(known => Agrees(known.Tuning)) is { } fitting)
        {
            if (names.Length != 6 && Array.TrueForAll(names, static name => name is null))
            {
                Remark(new TabRemark.StringsUnnamed(fitting));
            }

            return fitting.Tuning;
        }

        if (RunOf([.. names.Select(static name => name?.PitchClass)]) is { } run)
        {
            above = run;
            Remark(new TabRemark.SomeStrings(run + 1, run + names.Length));
            return Tuning.Standard;
        }

        if (sameCount.Count == 0)
        {
            throw top.Line.Wrong(
                0,
                top.Line.Text.Length,
                $"a neck given with it: no tuning of {names.Length} strings is usual"
            );
        }

        // No known one: that which needs the least turning, turned.
        var best = sameCount.MinBy(known => Turned(known.Tuning).Sum(static each => Math.Abs(each.Turn)))!.Tuning;
        var tuning = new Tuning(
            Turned(best).Select(each => new TuningString(Pitch.Nearest(each.Name, each.Midi), each.Start)).Reverse()
        );
        Remark(new TabRemark.UnusualNames(tuning, best));
        return tuning;

        void Remark(TabRemark remark) => remarks.Add(top.Line, 0, Math.Max(1, top.Start), remark);

        bool Agrees(Tuning tuning) =>
            tuning
                .Strings.Zip(names)
                .All(static each => each.Second is null || each.Second.Value.PitchClass == each.First.Open.PitchClass);

        List<(NoteName Name, int Midi, int Turn, int Start)> Turned(Tuning tuning) =>
            [
                .. tuning.Strings.Select(
                    (each, index) =>
                    {
                        var name = names[index] ?? each.Open.Name;
                        var turn = ((name.PitchClass - each.Open.PitchClass + 18) % 12) - 6;
                        return (name, each.Open.MidiNumber + turn, turn, each.Start);
                    }
                ),
            ];
    }

    /// <summary>After how many strings of standard tuning all names, fewer than its six, stand in a row; null if nowhere.</summary>
    private static int? RunOf(List<int?> typed)
    {
        var open = Tuning.Standard.Strings.Select(static each => (int?)each.Open.PitchClass).ToList();
        for (var at = 0; at + typed.Count <= open.Count && typed.Count < open.Count; at++)
        {
            if (open.GetRange(at, typed.Count).SequenceEqual(typed))
            {
                return at;
            }
        }

        return null;
    }
}

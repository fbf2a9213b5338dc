using System.Collections;
using System.Reflection;
using TheoryKit.Charts.Practice;
using TheoryKit.Charts.Theory;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Tests;
using TheoryKit.Drawing.Tests.Practice;
using TheoryKit.Licks;
using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Folders;
using TheoryKit.Tunings.Strings;

namespace TheoryKit.Interactive.Tests.Entries;

/// <summary>
/// Good values of every public type, for <see cref="PublicEntryTests"/>: <see cref="Roots"/>, the presets that types show as static
/// properties, and all that can be reached from these by reading properties and lists.
/// </summary>
internal sealed class PublicSamples
{
    // So many of a type are enough: what is to be found is what goes wrong with odd values beside them.
    private const int PerType = 4;

    // Over C: chord tones alone, and a walk up to the fifth.
    private static readonly string[] ShortLicks = ["-0-3-0-3-", "-3-1-2-3-"];

    private readonly Dictionary<Type, List<object>> byType = [];

    public PublicSamples()
    {
        var waiting = new Queue<object>(Roots());
        foreach (var type in PublicSurface.Types)
        {
            foreach (
                var preset in type.IsGenericTypeDefinition
                    ? []
                    : type.GetProperties(BindingFlags.Public | BindingFlags.Static)
            )
            {
                if (preset.GetMethod is not null && preset.GetValue(null) is { } value)
                {
                    waiting.Enqueue(value);
                }
            }
        }

        while (waiting.TryDequeue(out var value))
        {
            if (value is IEnumerable list and not string)
            {
                foreach (var item in list.Cast<object?>().Take(3))
                {
                    if (item is not null)
                    {
                        waiting.Enqueue(item);
                    }
                }
            }

            if (!PublicSurface.IsOurs(value.GetType()) || value is Enum || !Add(value))
            {
                continue;
            }

            foreach (var property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance))
            {
                if (
                    property.GetIndexParameters().Length == 0
                    && property.GetMethod is not null
                    && Read(property, value) is { } part
                )
                {
                    waiting.Enqueue(part);
                }
            }
        }
    }

    /// <summary>
    /// Makes what nothing led to: what the public constructors and static methods give for good arguments. So a type that can be made
    /// of others needs no entry.
    /// </summary>
    public void Grow(Arguments arguments)
    {
        var members = PublicSurface
            .Types.SelectMany(static type => PublicSurface.Members(type))
            .Where(static member => member.IsConstructor || member.IsStatic)
            .ToList();
        // Twice, since some are made of what others give.
        foreach (var member in members.Concat(members))
        {
            var made = member is MethodInfo method ? method.ReturnType : member.DeclaringType!;
            for (var variant = 0; variant < PerType && PublicSurface.IsOurs(made) && Of(made).Count == 0; variant++)
            {
                object?[] given =
                [
                    .. member
                        .GetParameters()
                        .Select(each => arguments.Good(each.ParameterType, variant + each.Position)),
                ];
                try
                {
                    var value = member is ConstructorInfo constructor
                        ? constructor.Invoke(given)
                        : member.Invoke(null, given);
                    if (value is not null)
                    {
                        Add(value);
                    }
                }
                catch (TargetInvocationException)
                {
                    // Another variant may do.
                }
            }
        }
    }

    /// <summary>The samples of a type, of what derives from it or implements it; the simplest first.</summary>
    public IReadOnlyList<object> Of(Type type)
    {
        if (byType.TryGetValue(type, out var own))
        {
            return own;
        }

        // One of each that derives from it, so that every kind is met.
        own = [.. byType.Where(each => type.IsAssignableFrom(each.Key)).Select(static each => each.Value[0])];
        return own;
    }

    /// <summary>What a new type is added to when nothing here leads to it.</summary>
    private static IEnumerable<object> Roots() =>
        new object[]
        {
            new TheoryKit.Fingering.Grips.GripLimits { MinSounding = 5, LastFret = 5 },
        }
            .Concat(Samples.Values)
            .Concat(Samples.Drawings)
            .Concat(Samples.Extremes)
            .Where(static value => value is not TheoryKit.Licks.Practice.PracticeLog)
            .Concat([
                TheoryKit.Licks.Practice.PracticeLog.Open(
                    System.IO.Path.Combine(Repository.EmptyFolder("entries"), "practice.log")
                ),
                new RenderContext(),
                PracticeSamples.Folder,
                new NamedFormula("m7", TheoryKit.Theory.Chords.Formula.Parse("1 b3 5 b7")),
                InteractiveExtension.Renderers,
                new InteractiveOptions(),
                PracticeSamples.History.TempoChart(),
                TheoryKit.Fingering.Retuning.TuningRequirement.Keeps(6),
            ])
            .Concat(TensionSamples())
            .Concat(RemarkSamples());

    /// <summary>What is noted of sets of every material.</summary>
    private static IEnumerable<object> TensionSamples() =>
        TheoryKit
            .Tunings.Strings.StringSet.Known.Where(static set =>
                set.Set.Count == TheoryKit.Tunings.Necks.Neck.Guitar.StringCount
            )
            .SelectMany(static set => TheoryKit.Tunings.Necks.Neck.Guitar.Tensions(set.Set).Notes);

    /// <summary>What is said of the licks of the notebooks, of one of chord tones alone and of one that walks.</summary>
    private static IEnumerable<object> RemarkSamples()
    {
        var licks = LickFolder
            .Open(System.IO.Path.Combine(Repository.Root, "notebooks", "licks"))
            .Licks.Select(static kept => kept.Lick)
            .Concat(
                ShortLicks.Select(static notes =>
                    Lick.Parse(
                        $"""
                        name: {notes}
                        changes: C

                        e|{notes}|
                        B|---------|
                        G|---------|
                        D|---------|
                        A|---------|
                        E|---------|
                        """
                    )
                )
            );
        var remarks = licks
            .Select(static lick => lick.Analyse())
            .SelectMany(static all => all.Remarks.Concat(all.Bars.SelectMany(static bar => bar.Remarks)))
            .ToList();
        return remarks.Concat<object>(remarks.OfType<LineRemark.Figures>().SelectMany(static each => each.All));
    }

    private static object? Read(PropertyInfo property, object value)
    {
        try
        {
            return property.GetValue(value);
        }
        catch (TargetInvocationException)
        {
            // Whether it may throw is for the test to say.
            return null;
        }
    }

    private bool Add(object value)
    {
        for (var type = value.GetType(); type is not null; type = type.BaseType)
        {
            if (type.IsPublic || type.IsNestedPublic)
            {
                if (!byType.TryGetValue(type, out var list))
                {
                    byType[type] = list = [];
                }

                if (
                    list.Count >= PerType
                    || list.Any(each => ReferenceEquals(each, value))
                    || value.GetType().IsValueType && list.Contains(value)
                )
                {
                    return false;
                }

                list.Add(value);
                return true;
            }
        }

        return false;
    }
}

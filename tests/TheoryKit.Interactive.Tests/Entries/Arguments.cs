using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq.Expressions;
using System.Reflection;
using Fractions;

namespace TheoryKit.Interactive.Tests.Entries;

/// <summary>Good and odd arguments for any parameter.</summary>
internal sealed class Arguments(PublicSamples samples)
{
    private const int OddPerType = 6;

    private readonly ConcurrentDictionary<Type, ConcurrentDictionary<string, object>> accepted = new();
    private IReadOnlyList<object> given = [];
    private readonly ConcurrentDictionary<object, string> makers = new(ReferenceEqualityComparer.Instance);

    /// <summary>Keeps a value that was made of odd parts and not refused: from now on it is an odd value of its type.</summary>
    public void Keep(object value, string madeBy)
    {
        if (PublicSurface.IsOurs(value.GetType()))
        {
            var kept = accepted.GetOrAdd(value.GetType(), static _ => new());
            if (kept.TryAdd(madeBy, value))
            {
                makers[value] = madeBy;
            }
        }
    }

    /// <summary>The call that an odd value came from; null for any other.</summary>
    public string? MadeBy(object? value) =>
        value is not null && makers.TryGetValue(value, out var call) ? $"what {call} gives" : null;

    /// <summary>From now on what was kept so far is given. Not sooner, so that every run gives the same, however its threads go.</summary>
    public void Give() =>
        given = [
            .. accepted
                .SelectMany(static each => each.Value)
                .OrderBy(static each => each.Key, StringComparer.Ordinal)
                .Select(static each => each.Value),
        ];

    /// <summary>The odd values of a type that were not refused.</summary>
    public IEnumerable<object> Kept(Type type) => given.Where(type.IsInstanceOfType);

    /// <summary>A good value; another for another variant. Null where a type has none.</summary>
    public object? Good(Type type, int variant = 0)
    {
        var inner = Nullable.GetUnderlyingType(type) ?? type;
        if (type.IsByRef)
        {
            return Good(type.GetElementType()!, variant);
        }

        if (inner.IsEnum)
        {
            return Pick([.. Enum.GetValues(inner).Cast<object>()], variant);
        }

        if (samples.Of(inner) is { Count: > 0 } known && inner != typeof(object))
        {
            return Pick(known, variant);
        }

        if (ItemOf(inner) is { } item)
        {
            return Collection(inner, item, [Good(item, variant), Good(item, variant + 1)]);
        }

        return inner switch
        {
            _ when inner == typeof(int) => Pick([3, 1, 60, 5], variant),
            _ when inner == typeof(long) => 3L,
            _ when inner == typeof(ulong) => 3UL,
            _ when inner == typeof(ushort) => (ushort)145,
            _ when inner == typeof(byte) => (byte)3,
            _ when inner == typeof(double) => Pick([1.0, 0.5, 648.0], variant),
            _ when inner == typeof(bool) => variant % 2 == 0,
            _ when inner == typeof(char) => Pick(['C', '/'], variant),
            _ when inner == typeof(string) => Pick(["Kestrel", "C", "1"], variant),
            _ when inner == typeof(Fraction) => Pick([Fraction.One, new Fraction(1, 2)], variant),
            _ when inner == typeof(object) => samples.Of(typeof(TheoryKit.Theory.Notes.NoteName))[0],
            _ when inner == typeof(DateOnly) => new DateOnly(2026, 11, 24),
            _ when inner == typeof(TimeOnly) => new TimeOnly(18, 30),
            _ when inner == typeof(Type) => typeof(TheoryKit.Theory.Notes.NoteName),
            _ when inner == typeof(IFormatProvider) => CultureInfo.InvariantCulture,
            _ when inner == typeof(CancellationToken) => CancellationToken.None,
            _ when inner.IsSubclassOf(typeof(Delegate)) => Function(inner, each => Good(each, variant)),
            _ when inner.IsValueType => Activator.CreateInstance(inner),
            _ => null,
        };
    }

    /// <summary>Values of a type that no caller should give but some do.</summary>
    public IEnumerable<object?> Odd(Type type)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner)
        {
            return Odd(inner).Prepend(null);
        }

        if (type.IsByRef)
        {
            return Odd(type.GetElementType()!);
        }

        if (type.IsEnum)
        {
            return [Enum.ToObject(type, 99), Enum.ToObject(type, -7)];
        }

        var own = PublicSurface.IsOurs(type) ? Kept(type).Take(OddPerType) : [];
        if (ItemOf(type) is { } item && !PublicSurface.IsOurs(type))
        {
            List<object?> lists =
            [
                type.IsValueType ? Activator.CreateInstance(type) : null,
                Collection(type, item, []),
            ];
            var defaults = item.IsValueType ? Activator.CreateInstance(item) : null;
            lists.Add(Collection(type, item, [Good(item), defaults]));
            lists.Add(Collection(type, item, [defaults]));
            lists.AddRange(
                Odd(item)
                    .Where(static each => each is not null)
                    .Take(5)
                    .Select(each => Collection(type, item, [Good(item), each]))
            );
            return lists;
        }

        return type switch
        {
            _ when type == typeof(int) => [-1, 0, int.MinValue, int.MaxValue, 1_000_000_000],
            _ when type == typeof(long) => [-1L, 0L, long.MinValue, long.MaxValue],
            _ when type == typeof(ulong) => [0UL, ulong.MaxValue],
            _ when type == typeof(ushort) => [(ushort)0, ushort.MaxValue],
            _ when type == typeof(byte) => [(byte)0, byte.MaxValue],
            _ when type == typeof(double) =>
            [
                double.NaN,
                double.PositiveInfinity,
                double.NegativeInfinity,
                0.0,
                -1.0,
                1e9,
                double.MaxValue,
                double.Epsilon,
            ],
            _ when type == typeof(bool) => [true, false],
            _ when type == typeof(char) => ['\0', '\ud800', 'ö'],
            _ when type == typeof(string) =>
            [
                null,
                "",
                " ",
                "\0\n\u0001<b>&\"",
                "\ud834\udd1eé\ud800",
                new string('7', 5000),
            ],
            _ when type == typeof(Fraction) =>
            [
                default(Fraction),
                -Fraction.One,
                (Fraction)1_000_000_000,
                new Fraction(int.MaxValue, 1) * int.MaxValue * int.MaxValue,
                new Fraction(1, int.MaxValue) / int.MaxValue / int.MaxValue,
                Fraction.NaN,
                Fraction.PositiveInfinity,
            ],
            _ when type == typeof(DateOnly) => [DateOnly.MinValue, DateOnly.MaxValue],
            _ when type == typeof(object) => [null, "text", 7, new object()],
            _ when type == typeof(Type) => [null, typeof(void), typeof(List<>)],
            _ when type == typeof(IFormatProvider) =>
            [
                null,
                CultureInfo.GetCultureInfo("tr-TR"),
                new NothingProvided(),
            ],
            _ when type == typeof(CancellationToken) => [new CancellationToken(true)],
            _ when type.IsSubclassOf(typeof(Delegate)) =>
            [
                null,
                Function(type, static each => each.IsValueType ? Activator.CreateInstance(each) : null),
            ],
            _ when type.IsValueType => own.Prepend(Activator.CreateInstance(type)),
            _ => own.Prepend(null),
        };
    }

    /// <summary>What a collection holds; null for what is none, or one of ours.</summary>
    private static Type? ItemOf(Type type)
    {
        if (type == typeof(string) || PublicSurface.IsOurs(type))
        {
            return null;
        }

        if (type.IsArray)
        {
            return type.GetElementType();
        }

        var list = type.GetInterfaces()
            .Prepend(type)
            .FirstOrDefault(static each =>
                each.IsGenericType && each.GetGenericTypeDefinition() == typeof(IEnumerable<>)
            );
        return list?.GetGenericArguments()[0];
    }

    private static object? Collection(Type type, Type item, IReadOnlyList<object?> items)
    {
        var array = Array.CreateInstance(item, items.Count);
        for (var index = 0; index < items.Count; index++)
        {
            array.SetValue(items[index], index);
        }

        if (type.IsAssignableFrom(array.GetType()))
        {
            return array;
        }

        var make = typeof(Arguments).GetMethod(nameof(As), BindingFlags.NonPublic | BindingFlags.Static)!;
        if (item.IsGenericType && item.GetGenericTypeDefinition() == typeof(KeyValuePair<,>))
        {
            var dictionary = (System.Collections.IDictionary)
                Activator.CreateInstance(typeof(Dictionary<,>).MakeGenericType(item.GetGenericArguments()))!;
            foreach (var pair in array)
            {
                if (item.GetProperty("Key")!.GetValue(pair) is { } key)
                {
                    dictionary[key] = item.GetProperty("Value")!.GetValue(pair);
                }
            }

            return type.IsInstanceOfType(dictionary) ? dictionary : null;
        }

        return make.MakeGenericMethod(item).Invoke(null, [array, type]);
    }

    private static object? As<T>(T[] items, Type type) =>
        new object[] { new HashSet<T>(items), ImmutableArray.Create(items), new List<T>(items) }.FirstOrDefault(
            type.IsInstanceOfType
        );

    /// <summary>A function that gives one value for everything.</summary>
    private static Delegate Function(Type type, Func<Type, object?> result)
    {
        var method = type.GetMethod("Invoke")!;
        var parameters = method
            .GetParameters()
            .Select(static each => Expression.Parameter(each.ParameterType))
            .ToArray();
        Expression body =
            method.ReturnType == typeof(void)
                ? Expression.Empty()
                : Expression.Constant(result(method.ReturnType), method.ReturnType);
        return Expression.Lambda(type, body, parameters).Compile();
    }

    private static object? Pick(IReadOnlyList<object> of, int variant) => of[variant % of.Count];

    /// <summary>A provider that has nothing to provide.</summary>
    private sealed class NothingProvided : IFormatProvider
    {
        public object? GetFormat(Type? formatType) => null;
    }
}

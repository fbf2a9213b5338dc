using System.Diagnostics;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Runtime.CompilerServices;
using Fractions;

namespace TheoryKit.Values;

/// <summary>What is asked of arguments in more than one place; every refusal names the argument and what would be right.</summary>
internal static class Check
{
    /// <summary>The value, if it is from the least to the most.</summary>
    public static int Range(
        int value,
        int least,
        int most,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) =>
        value >= least && value <= most
            ? value
            : throw new ArgumentOutOfRangeException(
                name,
                value,
                string.Create(CultureInfo.InvariantCulture, $"{name} is {least} to {most}.")
            );

    /// <summary>The value, if it is a number from the least to the most.</summary>
    public static double Range(
        double value,
        double least,
        double most,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) =>
        value >= least && value <= most
            ? value
            : throw new ArgumentOutOfRangeException(
                name,
                value,
                string.Create(CultureInfo.InvariantCulture, $"{name} is a number from {least} to {most}.")
            );

    /// <summary>The place in a list, if there is one.</summary>
    public static int Index(int index, int count, [CallerArgumentExpression(nameof(index))] string name = "") =>
        (uint)index < (uint)count
            ? index
            : throw new ArgumentOutOfRangeException(
                name,
                index,
                count == 0 ? "The list is empty, so it has no index." : $"The list has the indices 0 to {count - 1}."
            );

    /// <summary>The value, if it is one that the enumeration names.</summary>
    public static T Defined<T>(T value, [CallerArgumentExpression(nameof(value))] string name = "")
        where T : struct, Enum =>
        Enum.IsDefined(value)
            ? value
            : throw new ArgumentOutOfRangeException(
                name,
                value,
                $"{typeof(T).Name} is {English.List(Enum.GetNames<T>(), "or")}."
            );

    /// <summary>The value, if it is given.</summary>
    public static T NotNull<T>([NotNull] T? value, [CallerArgumentExpression(nameof(value))] string name = "")
        where T : class
    {
        ArgumentNullException.ThrowIfNull(value, name);
        return value;
    }

    /// <summary>What to throw where a value is of no kind that is known: there is none.</summary>
    public static Exception NoKind(object? value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value is null ? new ArgumentNullException(name) : new UnreachableException();

    /// <summary>The items as a list that never changes, if there is such a list and none of it is null.</summary>
    public static Sequence<T> Items<T>(
        [NotNull] IEnumerable<T>? items,
        [CallerArgumentExpression(nameof(items))] string name = ""
    )
    {
        ArgumentNullException.ThrowIfNull(items, name);
        var list = items.ToSequence();
        for (var index = 0; index < list.Count; index++)
        {
            if (list[index] is null)
            {
                throw new ArgumentException($"Item {index + 1} of {list.Count} is null; each has to be given.", name);
            }
        }

        return list;
    }

    /// <summary>The time in beats in lowest terms, if it is a number from the least to the most.</summary>
    public static Fraction Beats(
        Fraction value,
        Fraction least,
        Fraction most,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) =>
        !value.IsNaN && value >= least && value <= most
            ? value.Reduce()
            : throw new ArgumentOutOfRangeException(name, $"{value}", $"{name} is {least} to {most} beats.");

    /// <summary>The number in lowest terms, if it is one.</summary>
    public static Fraction Finite(Fraction value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        !value.IsNaN && !value.IsInfinity
            ? value.Reduce()
            : throw new ArgumentOutOfRangeException(name, $"{value}", $"{name} is a finite number.");
}

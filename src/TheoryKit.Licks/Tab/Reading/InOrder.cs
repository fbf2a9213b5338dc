namespace TheoryKit.Licks.Tab.Reading;

/// <summary>Something in a column.</summary>
internal interface IPlaced
{
    int Column { get; }
}

/// <summary>Searches lists that are in order.</summary>
internal static class InOrder
{
    /// <summary>How many at the beginning something holds of, where it holds of none after the first of which it does not.</summary>
    public static int CountWhile<T>(this IReadOnlyList<T> all, Func<T, bool> holds)
    {
        var (low, high) = (0, all.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = holds(all[middle]) ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>What stands in a column, else one before or after it; the default for nothing.</summary>
    public static T? Near<T>(this IReadOnlyList<T> all, int column)
        where T : class, IPlaced
    {
        T? near = null;
        for (
            var index = all.CountWhile(each => each.Column < column - 1);
            index < all.Count && all[index].Column <= column + 1;
            index++
        )
        {
            if (all[index].Column == column)
            {
                return all[index];
            }

            near ??= all[index];
        }

        return near;
    }
}

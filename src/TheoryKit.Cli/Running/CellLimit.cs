using System.Globalization;
using System.Text.RegularExpressions;

namespace TheoryKit.Cli.Running;

/// <summary>How long a cell may run.</summary>
internal static partial class CellLimit
{
    /// <summary>What holds where nothing else is said: long enough for any search of the library, short enough to wait for.</summary>
    public const string Default = "10m";

    private static readonly TimeSpan Shortest = TimeSpan.FromSeconds(0.1);

    private static readonly TimeSpan Longest = TimeSpan.FromHours(24);

    /// <summary>Reads <c>90</c>, <c>90s</c>, <c>1.5m</c> or <c>2h</c>; a number alone is seconds.</summary>
    /// <exception cref="FormatException">It is none of these, or not from 0.1 seconds to 24 hours.</exception>
    public static TimeSpan Parse(string text)
    {
        var match = Duration().Match(text);
        if (!match.Success)
        {
            throw new FormatException(
                $"\"{text}\" is not a time: a number of seconds, or with a unit as in 90s, 5m or 1.5h."
            );
        }

        var unit = match.Groups["unit"].ValueSpan switch
        {
            "h" => 3600.0,
            "m" => 60.0,
            _ => 1.0,
        };
        var seconds = double.Parse(match.Groups["number"].ValueSpan, CultureInfo.InvariantCulture) * unit;
        return seconds >= Shortest.TotalSeconds && seconds <= Longest.TotalSeconds
            ? TimeSpan.FromSeconds(seconds)
            : throw new FormatException(
                $"\"{text}\" is no time for a cell: it can have from 0.1 seconds to 24 hours, as in 90s, 5m or 1.5h."
            );
    }

    /// <summary>The time in words.</summary>
    public static string Said(TimeSpan time)
    {
        var (number, unit) =
            time.TotalHours is >= 1 and var hours && hours % 1 == 0 ? (hours, "hour")
            : time.TotalMinutes is >= 1 and var minutes && minutes % 1 == 0 ? (minutes, "minute")
            : (time.TotalSeconds, "second");
        return string.Create(CultureInfo.InvariantCulture, $"{number:0.###} {unit}{(number == 1 ? "" : "s")}");
    }

    [GeneratedRegex(@"\A\s*(?<number>[0-9]{1,9}(\.[0-9]{1,9})?)\s*(?<unit>[smh]?)\s*\z", RegexOptions.CultureInvariant)]
    private static partial Regex Duration();
}

using TheoryKit.Licks.Tab.Reading;

namespace TheoryKit.Licks;

/// <summary>A line of a lick's own kind, such as where it came from or the sound used: <c>from: the second chorus</c>.</summary>
public sealed record LickHeader
{
    /// <summary>The longest name: 40 characters.</summary>
    public const int MaxName = 40;

    /// <summary>A line.</summary>
    /// <param name="name">A letter, then letters, digits, spaces, - and _, none of the names that say something of their own (<c>tempo</c>).</param>
    /// <param name="value">Anything within one line.</param>
    /// <exception cref="ArgumentException">The name is none or taken, or the value is not one line of text.</exception>
    public LickHeader(string name, string value)
    {
        ArgumentNullException.ThrowIfNull(name);
        Name = name.Trim();
        if (!IsName(Name))
        {
            throw new ArgumentException(
                $"\"{name}\" names no line of a lick: it is a letter and up to {MaxName - 1} more letters, digits, spaces, - or _.",
                nameof(name)
            );
        }

        if (Lick.IsKnownHeader(Name))
        {
            throw new ArgumentException($"A lick has a property of its own for \"{name}\".", nameof(name));
        }

        Value = LickText.OneLine(value, nameof(value));
    }

    /// <summary>The name, before the colon.</summary>
    public string Name { get; }

    /// <summary>What it says; may be empty.</summary>
    public string Value { get; }

    /// <summary>The line.</summary>
    public override string ToString() => $"{Name}: {Value}".TrimEnd();

    internal static bool IsName(ReadOnlySpan<char> name)
    {
        if (name.Length is 0 or > MaxName || !char.IsLetter(name[0]) || name[^1] == ' ')
        {
            return false;
        }

        foreach (var c in name)
        {
            if (!char.IsLetterOrDigit(c) && c is not (' ' or '-' or '_'))
            {
                return false;
            }
        }

        return true;
    }
}

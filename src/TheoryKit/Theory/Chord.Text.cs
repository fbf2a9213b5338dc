namespace TheoryKit.Theory;

public sealed partial class Chord
{
    /// <summary>Reads a chord.</summary>
    /// <exception cref="FormatException">The text is not a chord.</exception>
    public static Chord Parse(string s, IFormatProvider? provider = null) => throw new NotImplementedException();
}

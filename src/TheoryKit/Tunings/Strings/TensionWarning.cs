using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>What is amiss with the strings of a <see cref="TensionReport"/>. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record TensionWarning
{
    private TensionWarning() { }

    /// <summary>A string is not comfortable; its <see cref="StringTension.State"/> and its <see cref="StringTension.Advice"/> say more.</summary>
    /// <param name="String">The string.</param>
    public sealed partial record NotComfortable(StringTension String) : TensionWarning;

    /// <summary>All strings together pull much more than in the reference tuning.</summary>
    /// <param name="More">How much more.</param>
    /// <param name="Part">The same as a part of the pull in the reference tuning.</param>
    public sealed partial record MuchMoreInAll(Tension More, double Part) : TensionWarning;
}

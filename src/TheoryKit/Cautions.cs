namespace TheoryKit;

/// <summary>The cautions, all of them: what is said wherever a player could come to harm, in the same words everywhere.</summary>
public static class Cautions
{
    /// <summary>Of strings under tension.</summary>
    public const string Strings =
        "A string that breaks whips: wear eye protection when you tune up or change strings, and keep your face away. "
        + "Tune lower rather than force a string, for a lighter one only eases the neck; bring the pitch up slowly, and ask a luthier before you load a neck or a bridge more than it is used to.";

    /// <summary>Of stretches and of practice.</summary>
    public const string Hands =
        "A hand is more than its reach. Stop when it hurts, rest, and ask a teacher or a physiotherapist before you stretch further.";

    /// <summary>Of loud sound.</summary>
    public const string Ears =
        "Start quietly, above all with headphones, and take breaks. Stop when your ears ring, and ask a doctor if it stays.";
}

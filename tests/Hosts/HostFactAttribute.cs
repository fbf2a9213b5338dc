namespace TheoryKit.Hosts;

/// <summary>
/// A test that needs programs of the machine: skipped, with the reason, where they are missing, unless
/// THEORYKIT_REQUIRE_HOSTS=1 makes that a failure.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class HostFactAttribute : FactAttribute
{
    public HostFactAttribute(params string[] hosts) => Skip = HostTools.ReasonToSkip(hosts);
}

/// <summary>The same for a test with data.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class HostTheoryAttribute : TheoryAttribute
{
    public HostTheoryAttribute(params string[] hosts) => Skip = HostTools.ReasonToSkip(hosts);
}

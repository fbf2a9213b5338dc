using System.Reflection;
using PublicApiGenerator;
using TheoryKit.Charts;
using TheoryKit.Drawing;
using TheoryKit.Interactive;
using TheoryKit.Licks;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Cli;

/// <summary>What the packages promise stands in files, one a package, so that a change to it shows in review.</summary>
public class PublicApiTests
{
    private static readonly ApiGeneratorOptions Options = new()
    {
        IncludeAssemblyAttributes = false,
        ExcludeAttributes =
        [
            "System.Diagnostics.CodeAnalysis.ExcludeFromCodeCoverageAttribute",
            "System.CodeDom.Compiler.GeneratedCodeAttribute",
        ],
    };

    public static TheoryData<string> Packages => [.. Assemblies.Select(static assembly => assembly.GetName().Name!)];

    private static Assembly[] Assemblies =>
        [
            typeof(NoteName).Assembly,
            typeof(Lick).Assembly,
            typeof(DrawingRenderers).Assembly,
            typeof(ChartRenderers).Assembly,
            typeof(InteractiveExtension).Assembly,
        ];

    [Theory]
    [MemberData(nameof(Packages))]
    public void The_public_members_are_those_of_the_file(string package) =>
        Expectations.Matches(
            Assemblies.Single(assembly => assembly.GetName().Name == package).GeneratePublicApi(Options),
            $"Api/{package}.txt"
        );

    [Fact]
    public void The_program_promises_nothing() => Assert.Empty(typeof(Program).Assembly.GetExportedTypes());
}

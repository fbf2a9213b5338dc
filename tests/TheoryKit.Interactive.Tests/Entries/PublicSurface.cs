using System.Reflection;
using System.Runtime.CompilerServices;
using TheoryKit.Charts.Figures;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Interactive.Tests.Entries;

/// <summary>Everything that a user of the packages can call.</summary>
internal static class PublicSurface
{
    public static IReadOnlyList<Assembly> Assemblies { get; } =
    [
        typeof(NoteName).Assembly,
        typeof(TheoryKit.Licks.Lick).Assembly,
        typeof(RendererSet).Assembly,
        typeof(ChartTable).Assembly,
        typeof(InteractiveExtension).Assembly,
    ];

    /// <summary>The types whose members can be called: not interfaces, delegates and enums, which have none of their own.</summary>
    public static IReadOnlyList<Type> Types { get; } =
    [
        .. Assemblies
            .SelectMany(static assembly => assembly.GetExportedTypes())
            .Where(static type => !type.IsInterface && !type.IsEnum && !type.IsSubclassOf(typeof(Delegate)))
            .OrderBy(static type => type.FullName, StringComparer.Ordinal),
    ];

    public static bool IsOurs(Type type) => Assemblies.Contains(type.Assembly);

    /// <summary>
    /// The constructors, methods, operators, accessors and indexers that a type declares. Those of a generic base are its own: nothing
    /// else closes it. A member over spans is left out, for reflection can't call it; each has a twin over strings.
    /// </summary>
    public static IEnumerable<MethodBase> Members(Type type)
    {
        const BindingFlags Declared =
            BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        if (type.IsGenericTypeDefinition)
        {
            yield break;
        }

        for (var at = type; at == type || at is { IsGenericType: true } && IsOurs(at); at = at.BaseType!)
        {
            var constructors = at.IsAbstract ? [] : at.GetConstructors(Declared);
            foreach (var member in constructors.Concat<MethodBase>(at.GetMethods(Declared).Select(Closed)))
            {
                if (
                    member.Name != "<Clone>$"
                    && !member.GetParameters().Any(static parameter => IsSpan(parameter.ParameterType))
                )
                {
                    yield return member;
                }
            }
        }
    }

    public static bool IsSetter(MethodBase member) =>
        member.IsSpecialName && member.Name.StartsWith("set_", StringComparison.Ordinal);

    public static bool IsInit(MethodBase member) =>
        member is MethodInfo method
        && method.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    /// <summary>A generic method for the first of our types that its constraints allow.</summary>
    private static MethodBase Closed(MethodInfo method) =>
        method.IsGenericMethodDefinition
            ? method.MakeGenericMethod([.. method.GetGenericArguments().Select(static _ => typeof(NoteName))])
            : method;

    private static bool IsSpan(Type type) => (type.IsByRef ? type.GetElementType()! : type).IsByRefLike;
}

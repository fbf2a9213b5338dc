using System.Reflection;
using System.Runtime.Loader;

namespace TheoryKit.Interactive;

/// <summary>
/// Lets Plotly.NET run in a host that has loaded an FSharp.Core before it: the notebook kernel carries an older one than
/// Plotly.NET asks for, and one process can't have two.
/// </summary>
internal static class FSharpCoreBridge
{
    private static int built;

    /// <summary>Answers requests for FSharp.Core that fail with the one already loaded; once per process.</summary>
    public static void Build()
    {
        if (Interlocked.Exchange(ref built, 1) == 0)
        {
            AssemblyLoadContext.Default.Resolving += Resolve;
        }
    }

    private static Assembly? Resolve(AssemblyLoadContext context, AssemblyName name) =>
        name.Name == "FSharp.Core"
            ? AppDomain.CurrentDomain.GetAssemblies().FirstOrDefault(static a => a.GetName().Name == "FSharp.Core")
            : null;
}

using System.Collections.Concurrent;
using System.Reflection;
using System.Xml.Linq;

namespace TheoryKit.Interactive.Tests.Entries;

/// <summary>Which exceptions the documentation of a public member names.</summary>
internal static class PublicDocs
{
    private static readonly ConcurrentDictionary<Assembly, Dictionary<string, XElement>> Files = new();

    /// <summary>Whether the member, or what it inherits its documentation from, names the exception or a base of it.</summary>
    public static bool Names(MethodBase member, Type exception)
    {
        var names = new HashSet<string>();
        for (var type = exception; type != typeof(object); type = type.BaseType!)
        {
            names.Add($"T:{type.FullName}");
        }

        return Names(member.DeclaringType!.Assembly, IdOf(member), names, 0);
    }

    private static bool Names(Assembly assembly, string id, HashSet<string> names, int depth)
    {
        var docs = Files.GetOrAdd(assembly, Read);
        return depth < 4
            && docs.TryGetValue(id, out var text)
            && (
                text.Elements("exception").Any(each => names.Contains((string?)each.Attribute("cref") ?? ""))
                || text.Descendants("inheritdoc")
                    .Any(each => (string?)each.Attribute("cref") is { } from && Names(assembly, from, names, depth + 1))
            );
    }

    private static Dictionary<string, XElement> Read(Assembly assembly) =>
        XDocument
            .Load(System.IO.Path.ChangeExtension(assembly.Location, ".xml"))
            .Descendants("member")
            .ToDictionary(static member => (string)member.Attribute("name")!);

    /// <summary>The identifier under which the compiler writes a member's documentation.</summary>
    private static string IdOf(MethodBase member)
    {
        member = member is MethodInfo { IsGenericMethod: true } method ? method.GetGenericMethodDefinition() : member;
        var type = member.DeclaringType!;
        if (type.IsGenericType)
        {
            type = type.GetGenericTypeDefinition();
            member = type.GetMembers(
                    BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly
                )
                .OfType<MethodBase>()
                .First(each => each.MetadataToken == member.MetadataToken);
        }

        var parameters = member.GetParameters();
        var list = (IEnumerable<ParameterInfo> of) =>
            string.Join(',', of.Select(static parameter => NameOf(parameter.ParameterType)));
        if (member.IsSpecialName && member.Name[..4] is "get_" or "set_")
        {
            var own = member.Name[0] == 's' ? parameters[..^1] : parameters;
            return $"P:{NameOf(type)}.{member.Name[4..]}{(own.Length > 0 ? $"({list(own)})" : "")}";
        }

        var name = member.IsConstructor ? "#ctor" : member.Name;
        var arity = member.IsGenericMethod ? $"``{member.GetGenericArguments().Length}" : "";
        var end = member.Name is "op_Implicit" or "op_Explicit" ? $"~{NameOf(((MethodInfo)member).ReturnType)}" : "";
        return $"M:{NameOf(type)}.{name}{arity}{(parameters.Length > 0 ? $"({list(parameters)})" : "")}{end}";
    }

    private static string NameOf(Type type)
    {
        if (type.IsByRef)
        {
            return NameOf(type.GetElementType()!) + "@";
        }

        if (type.IsArray)
        {
            return NameOf(type.GetElementType()!) + "[]";
        }

        if (type.IsGenericParameter)
        {
            return (type.DeclaringMethod is null ? "`" : "``") + type.GenericParameterPosition;
        }

        if (!type.IsGenericType || type.IsGenericTypeDefinition)
        {
            return type.FullName!.Replace('+', '.');
        }

        var definition = type.GetGenericTypeDefinition().FullName!.Replace('+', '.');
        var arguments = type.GetGenericArguments().Select(NameOf);
        return $"{definition[..definition.IndexOf('`', StringComparison.Ordinal)]}{{{string.Join(',', arguments)}}}";
    }
}

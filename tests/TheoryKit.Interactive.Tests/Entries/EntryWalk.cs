using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;
using System.Text.RegularExpressions;

namespace TheoryKit.Interactive.Tests.Entries;

/// <summary>One answer that a member may not give.</summary>
internal sealed record Fault(string Member, string Call, string What);

/// <summary>Calls members with odd arguments, one odd thing at a time, and judges how they answer.</summary>
internal sealed partial class EntryWalk(PublicSamples samples, Arguments arguments)
{
    private const int Variants = 6;
    private const int Receivers = 2;
    private const int Listed = 100;

    // Far beyond what any question about music takes, and far from what a machine has.
    private const long MostBytes = 1L << 30;

    private readonly ConcurrentQueue<Fault> faults = new();

    public IReadOnlyCollection<Fault> Faults => faults;

    /// <summary>Tries a member; gives the number of calls.</summary>
    public int Try(Type type, MethodBase member, Action<string> begin)
    {
        var calls = 0;
        var parameters = member.GetParameters();
        List<object?> receivers =
            member.IsStatic || member.IsConstructor
                ? [null]
                :
                [
                    .. samples.Of(type).Take(Receivers),
                    .. type.IsValueType ? [Activator.CreateInstance(type)] : Array.Empty<object?>(),
                ];
        object?[]? good = null;
        foreach (var receiver in receivers)
        {
            object?[]? fits = null;
            for (var variant = 0; variant < Variants && fits is null; variant++)
            {
                // A parser's good text is one that a value of it writes.
                var tried = parameters
                    .Select(
                        (each, index) =>
                            each.ParameterType == typeof(string)
                            && index == 0
                            && member.Name is "Parse" or "TryParse"
                            && samples.Of(type) is { Count: > 0 } values
                                ? values[variant % values.Count].ToString()
                                : Given(member, each, variant)
                    )
                    .ToArray();
                calls++;
                if (Call(member, receiver, tried, "good arguments", begin, false))
                {
                    fits = tried;
                }

                if (parameters.Length == 0)
                {
                    break;
                }
            }

            good = fits ?? good ?? [.. parameters.Select(each => Given(member, each, 0))];
            for (var at = 0; at < parameters.Length; at++)
            {
                if (parameters[at].IsOut)
                {
                    continue;
                }

                foreach (var odd in arguments.Odd(parameters[at].ParameterType))
                {
                    var tried = good.ToArray();
                    tried[at] = odd;
                    calls++;
                    Call(member, receiver, tried, $"{parameters[at].Name} = {Named(odd)}", begin, true);
                }
            }
        }

        if (!member.IsStatic && !member.IsConstructor && !PublicSurface.IsInit(member))
        {
            foreach (var receiver in arguments.Kept(type).Take(24))
            {
                calls++;
                Call(
                    member,
                    receiver,
                    good ?? [.. parameters.Select(each => arguments.Good(each.ParameterType))],
                    "good arguments",
                    begin,
                    false
                );
            }
        }

        return calls;
    }

    private object? Given(MethodBase member, ParameterInfo parameter, int variant) =>
        parameter.HasDefaultValue
        && !PublicSurface.IsSetter(member)
        && variant % 2 == 0
        // The usual limits allow thousands of grips of a chord, and some questions ask for every two of them.
        && parameter.ParameterType != typeof(TheoryKit.Fingering.Grips.GripLimits)
            ? parameter.DefaultValue is null
            && parameter.ParameterType.IsValueType
            && Nullable.GetUnderlyingType(parameter.ParameterType) is null
                ? Activator.CreateInstance(parameter.ParameterType)
                : parameter.DefaultValue is not null
                && Nullable.GetUnderlyingType(parameter.ParameterType) is { IsEnum: true } kind
                    ? Enum.ToObject(kind, parameter.DefaultValue)
                    : parameter.DefaultValue
            : arguments.Good(parameter.ParameterType, variant);

    private bool Call(
        MethodBase member,
        object? receiver,
        object?[] given,
        string odd,
        Action<string> begin,
        bool keeps
    )
    {
        var name = NameOf(member);
        var call = receiver is null ? odd : $"{odd}; on {Named(receiver)}";
        begin($"{name}: {call}");
        var before = GC.GetAllocatedBytesForCurrentThread();
        try
        {
            object? result;
            if (PublicSurface.IsInit(member))
            {
                receiver = Copy(receiver!);
                if (receiver is null)
                {
                    return false;
                }

                member.Invoke(receiver, given);
                result = receiver;
            }
            else
            {
                result = member is ConstructorInfo constructor
                    ? constructor.Invoke(given)
                    : member.Invoke(receiver, given);
            }

            if (result is Task task)
            {
                task.GetAwaiter().GetResult();
            }
            else if (result is IEnumerable list and not string && !(result is System.Collections.ICollection))
            {
                foreach (var _ in list.Cast<object?>().Take(Listed)) { }
            }

            if (keeps && result is not null)
            {
                arguments.Keep(result, $"{name}: {odd}");
            }

            if (GC.GetAllocatedBytesForCurrentThread() - before is var bytes && bytes > MostBytes)
            {
                faults.Enqueue(new(name, call, $"takes {bytes >> 20} MB"));
            }

            return true;
        }
        catch (Exception exception)
        {
            var thrown = exception is TargetInvocationException { InnerException: { } inner } ? inner : exception;
            if (Wrong(member, thrown) is { } wrong)
            {
                wrong = Plain(wrong);
                faults.Enqueue(new(name, call, $"{wrong}\n      {Where(thrown)}"));
            }

            return false;
        }
    }

    /// <summary>What is wrong with an exception; null if it is one that a caller can work with.</summary>
    private static string? Wrong(MethodBase member, Exception thrown)
    {
        switch (thrown)
        {
            case ArgumentException argument:
                var said = ParameterEnd().Replace(argument.Message, "");
                return argument.ParamName is not { Length: > 0 } name
                        ? $"{thrown.GetType().Name} names no parameter: {thrown.Message}"
                    : !IsNamed(member, name)
                        ? $"{thrown.GetType().Name} names \"{name}\", which the caller never gave: {thrown.Message}"
                    : said.Trim() is not { Length: >= 14 }
                        ? $"{thrown.GetType().Name} does not say what would be right: {thrown.Message}"
                    : null;
            case OperationCanceledException:
                return null;
            case FormatException when member.Name is "Parse" or "ParseList" or "InWords":
                return null;
            case KeyNotFoundException when member.Name == "get_Item":
                return null;
            case InvalidOperationException
            or FormatException
            or OverflowException
            or NotSupportedException
            or IOException
            or UnauthorizedAccessException when PublicDocs.Names(member, thrown.GetType()):
                return null;
            default:
                return $"{thrown.GetType().Name}: {thrown.Message}";
        }
    }

    private static bool IsNamed(MethodBase member, string name) =>
        member.GetParameters().Any(each => string.Equals(each.Name, name, StringComparison.OrdinalIgnoreCase))
        || member
            .GetParameters()
            .Any(each => PublicSurface.IsOurs(each.ParameterType) && each.ParameterType.GetProperty(name) is not null)
        || member.IsSpecialName && (name == "value" || member.Name.EndsWith($"_{name}", StringComparison.Ordinal));

    private static string Where(Exception thrown)
    {
        var lines = (thrown.StackTrace ?? "")
            .Split('\n')
            .Where(static line =>
                line.Contains("TheoryKit", StringComparison.Ordinal)
                && !line.Contains(nameof(EntryWalk), StringComparison.Ordinal)
            );
        return string.Join("\n      ", lines.Take(3).Select(static line => line.Trim()));
    }

    /// <summary>A copy as <c>with</c> makes it; null for what has none.</summary>
    private static object? Copy(object value) =>
        value.GetType().IsValueType
            ? System.Runtime.CompilerServices.RuntimeHelpers.GetObjectValue(value)
            : value.GetType().GetMethod("<Clone>$")?.Invoke(value, null);

    internal static string NameOf(MethodBase member)
    {
        var type = member.DeclaringType!.FullName!;
        var at = type.IndexOf("[[", StringComparison.Ordinal);
        return $"{(at < 0 ? type : type[..at])}.{member.Name}({string.Join(", ", member.GetParameters().Select(static each => each.ParameterType.Name))})";
    }

    private string Named(object? value) => arguments.MadeBy(value) ?? Shown(value);

    private string Shown(object? value)
    {
        if (value is null)
        {
            return "null";
        }

        string? text;
        try
        {
            text =
                value is IEnumerable list and not string && !PublicSurface.IsOurs(value.GetType())
                    ? $"[{string.Join(", ", list.Cast<object?>().Take(3).Select(Named))}]"
                    : value.ToString();
        }
        catch (Exception)
        {
            text = "?";
        }

        text = Plain(text ?? "");
        return $"{value.GetType().Name} {(text.Length > 70 ? text[..70] + "…" : text)}";
    }

    /// <summary>A text that any report can hold.</summary>
    private static string Plain(string text) =>
        string.Concat(text.Select(static c => c is >= ' ' and <= '~' ? $"{c}" : $"\\u{(int)c:x4}"));

    [GeneratedRegex(@" \(Parameter '.*'\)|Actual value was .*\.")]
    private static partial Regex ParameterEnd();
}

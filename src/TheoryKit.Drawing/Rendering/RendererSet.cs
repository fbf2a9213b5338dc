using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Rendering;

/// <summary>
/// A set of renderers, at most one per value type: the one way from a value to HTML and plain text that every host uses.
/// </summary>
/// <remarks>Immutable: the methods that add return a new set. A later renderer for the same type replaces the earlier one.</remarks>
public sealed class RendererSet
{
    private readonly ImmutableDictionary<Type, Entry> entries;

    private RendererSet(ImmutableDictionary<Type, Entry> entries) => this.entries = entries;

    /// <summary>The set with no renderer.</summary>
    public static RendererSet Empty { get; } = new(ImmutableDictionary<Type, Entry>.Empty);

    /// <summary>The types shown by this set, in no particular order.</summary>
    public IEnumerable<Type> Types => entries.Keys;

    /// <summary>This set and <paramref name="renderer"/>.</summary>
    public RendererSet Add<T>(IRenderer<T> renderer)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(renderer);
        return new(entries.SetItem(typeof(T), new Entry<T>(renderer)));
    }

    /// <summary>This set and all of <paramref name="other"/>.</summary>
    public RendererSet Add(RendererSet other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new(entries.SetItems(other.entries));
    }

    /// <summary>Whether a value of <paramref name="type"/> can be shown: it, a base class or an interface of it has a renderer.</summary>
    public bool Shows(Type type) => TryFind(Check.NotNull(type), out _);

    /// <summary><paramref name="value"/> as an HTML fragment.</summary>
    /// <exception cref="NotSupportedException">No renderer for the value's type.</exception>
    public string Html(object value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        return Find(value.GetType()).Html(value, context);
    }

    /// <summary><paramref name="value"/> as plain text.</summary>
    /// <exception cref="NotSupportedException">No renderer for the value's type.</exception>
    public string Text(object value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return Find(value.GetType()).Text(value);
    }

    private Entry Find(Type type) =>
        TryFind(type, out var entry)
            ? entry
            : throw new NotSupportedException($"Nothing here shows a {type.Name}; add a renderer for it to the set.");

    private bool TryFind(Type type, [NotNullWhen(true)] out Entry? entry)
    {
        for (var t = type; t is not null; t = t.BaseType)
        {
            if (entries.TryGetValue(t, out entry))
            {
                return true;
            }
        }

        entry = type.GetInterfaces()
            .Select(t => entries.GetValueOrDefault(t))
            .FirstOrDefault(static found => found is not null);
        return entry is not null;
    }

    private abstract class Entry
    {
        public abstract string Html(object value, RenderContext context);

        public abstract string Text(object value);
    }

    private sealed class Entry<T>(IRenderer<T> renderer) : Entry
        where T : notnull
    {
        public override string Html(object value, RenderContext context) => renderer.Html((T)value, context);

        public override string Text(object value) => renderer.Text((T)value);
    }
}

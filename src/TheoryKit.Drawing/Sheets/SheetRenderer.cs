using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Drawing.Sheets;

/// <summary>Shows values of one type by what a sheet about them says.</summary>
/// <param name="describe">The sheet about a value.</param>
/// <param name="naming">How notes are named; null for English.</param>
internal sealed class SheetRenderer<T>(Func<T, Sheet> describe, IFormatProvider? naming = null) : IRenderer<T>
{
    public string Html(T value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return SheetHtml.Write(describe(value), context, naming);
    }

    public string Text(T value) => SheetText.Write(describe(value), naming);
}

using System.Net;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using TheoryKit.Interactive.Cells;

namespace TheoryKit.Cli.Pages;

/// <summary>Source code as HTML; C# is coloured by the compiler's own tokens.</summary>
internal static class Code
{
    private static readonly CSharpParseOptions Script = new(LanguageVersion.Latest, kind: SourceCodeKind.Script);

    /// <summary>Whether the language's name means C#.</summary>
    public static bool IsCSharp(string language) => language.Trim().ToUpperInvariant() is "C#" or "CSHARP" or "CS";

    /// <summary>A <c>pre</c> element with <paramref name="code"/>; it can be scrolled by keyboard.</summary>
    public static string Html(string code, string language) =>
        $"<pre tabindex=\"0\" class=\"code\"><code>{(IsCSharp(language) ? Colour(code) : WebUtility.HtmlEncode(code))}</code></pre>";

    /// <summary>
    /// A cell may change its language at lines that begin with <c>#!</c>: only its C# is coloured as that, the rest is text.
    /// </summary>
    private static string Colour(string code)
    {
        var html = new StringBuilder();
        var (isCSharp, start, at) = (true, 0, 0);
        while (at < code.Length)
        {
            var end = code.IndexOf('\n', at);
            var next = end < 0 ? code.Length : end + 1;
            if (code.AsSpan(at).StartsWith("#!", StringComparison.Ordinal))
            {
                AppendPart(at);
                var line = code[at..next];
                Append(html, line, "d");
                var name = line[2..].Split((char[]?)null, 2)[0];
                isCSharp = IsCSharp(name) || (isCSharp && !IsLanguage(name));
                start = next;
            }

            at = next;
        }

        AppendPart(code.Length);
        return html.ToString();

        void AppendPart(int end) =>
            html.Append(isCSharp ? ColourCSharp(code[start..end]) : WebUtility.HtmlEncode(code[start..end]));
    }

    private static bool IsLanguage(string name) =>
        CellLanguages.Names.Contains(name, StringComparer.Ordinal) || name is "html" or "markdown";

    private static string ColourCSharp(string code)
    {
        var html = new StringBuilder();
        foreach (var token in SyntaxFactory.ParseTokens(code, options: Script))
        {
            AppendTrivia(html, token.LeadingTrivia);
            Append(html, token.Text, Class(token));
            AppendTrivia(html, token.TrailingTrivia);
        }

        return html.ToString();
    }

    private static void AppendTrivia(StringBuilder html, SyntaxTriviaList trivia)
    {
        foreach (var part in trivia)
        {
            Append(
                html,
                part.ToFullString(),
                part.IsDirective ? "d"
                    : IsComment(part) ? "c"
                    : null
            );
        }
    }

    private static void Append(StringBuilder html, string text, string? kind)
    {
        var encoded = WebUtility.HtmlEncode(text);
        if (kind is null || text.Length == 0)
        {
            html.Append(encoded);
        }
        else
        {
            html.Append($"<span class=\"{kind}\">{encoded}</span>");
        }
    }

    private static string? Class(SyntaxToken token) =>
        token.Kind() switch
        {
            SyntaxKind.NumericLiteralToken => "n",
            SyntaxKind.StringLiteralToken
            or SyntaxKind.CharacterLiteralToken
            or SyntaxKind.SingleLineRawStringLiteralToken
            or SyntaxKind.MultiLineRawStringLiteralToken
            or SyntaxKind.InterpolatedStringToken
            or SyntaxKind.InterpolatedStringStartToken
            or SyntaxKind.InterpolatedStringTextToken
            or SyntaxKind.InterpolatedStringEndToken => "s",
            var kind when SyntaxFacts.IsKeywordKind(kind) || SyntaxFacts.IsContextualKeyword(kind) => "k",
            SyntaxKind.IdentifierToken when token.Text is "var" or "await" or "record" => "k",
            _ => null,
        };

    private static bool IsComment(SyntaxTrivia trivia) =>
        trivia.Kind()
            is SyntaxKind.SingleLineCommentTrivia
                or SyntaxKind.MultiLineCommentTrivia
                or SyntaxKind.SingleLineDocumentationCommentTrivia
                or SyntaxKind.MultiLineDocumentationCommentTrivia;
}

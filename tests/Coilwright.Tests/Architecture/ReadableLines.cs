using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Coilwright.Tests.Architecture;

/// <summary>What makes a line hard to read: its length, and a conditional expression inside another.</summary>
internal static class ReadableLines
{
    /// <summary>Columns that a line may have.</summary>
    public const int Columns = 140;

    /// <summary>Numbers of the lines that are too long, from 1.</summary>
    public static IEnumerable<int> TooLong(string source) =>
        source.Split('\n').Select((line, at) => (line, at)).Where(one => one.line.TrimEnd('\r').Length > Columns).Select(one => one.at + 1);

    /// <summary>Conditional expressions inside others in C#; a lambda, a statement and an arm of a switch begin anew.</summary>
    public static IEnumerable<string> Nested(string source) => Nested(CSharpSyntaxTree.ParseText(source).GetRoot());

    /// <summary>The same in a page: in its expressions in parentheses and in its code.</summary>
    public static IEnumerable<string> NestedInPage(string page)
    {
        List<string> found = [];
        for (int at = page.IndexOf("@(", StringComparison.Ordinal); at >= 0; at = page.IndexOf("@(", at + 2, StringComparison.Ordinal))
        {
            found.AddRange(Nested(SyntaxFactory.ParseExpression(page, at + 1, consumeFullText: false)));
        }

        int code = page.IndexOf("@code {", StringComparison.Ordinal);
        return code < 0 ? found : [.. found, .. Nested("class Page " + page[(code + "@code ".Length)..])];
    }

    private static IEnumerable<string> Nested(SyntaxNode root) =>
        root.DescendantNodesAndSelf()
            .OfType<ConditionalExpressionSyntax>()
            .Where(one => one.Ancestors().TakeWhile(outer => !BeginsAnew(outer)).OfType<ConditionalExpressionSyntax>().Any())
            .Select(one => one.ToString());

    private static bool BeginsAnew(SyntaxNode node) =>
        node is StatementSyntax or MemberDeclarationSyntax or AnonymousFunctionExpressionSyntax or SwitchExpressionArmSyntax;
}

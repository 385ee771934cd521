using System.Text.RegularExpressions;

namespace Coilwright.Tests.Architecture;

/// <summary>A public member whose numbers are checked on entry.</summary>
/// <param name="Declaration">First line of its declaration.</param>
/// <param name="SaysWhatItThrows">True when its documentation names an exception.</param>
public sealed record GuardedMember(string Declaration, bool SaysWhatItThrows);

/// <summary>Finds such members in a source text, by the indents that the layout tool keeps.</summary>
public static partial class GuardedMembers
{
    /// <summary>Guarded members of public types, in their order.</summary>
    public static IReadOnlyList<GuardedMember> In(string source)
    {
        string[] lines = source.Split('\n');
        return
        [
            .. Enumerable
                .Range(0, lines.Length)
                .Where(at => lines[at].TrimStart().StartsWith("public ", StringComparison.Ordinal) && !DeclaresType(lines[at]))
                .Where(at => IsInPublicTypes(lines, at))
                .Where(at => Member(lines, at).Any(line => line.Contains("Require.", StringComparison.Ordinal)))
                .Select(at => new GuardedMember(lines[at].Trim(), Comment(lines, at).Any(NamesException))),
        ];
    }

    private static bool NamesException(string line) => line.Contains("<exception ", StringComparison.Ordinal);

    private static bool DeclaresType(string line) => TypeDeclaration().IsMatch(line);

    private static int Indent(string line) => line.Length - line.TrimStart().Length;

    private static bool IsInPublicTypes(string[] lines, int at)
    {
        int indent = Indent(lines[at]);
        for (int above = at - 1; above >= 0 && indent > 0; above--)
        {
            if (DeclaresType(lines[above]) && Indent(lines[above]) < indent)
            {
                if (!lines[above].TrimStart().StartsWith("public ", StringComparison.Ordinal))
                {
                    return false;
                }

                indent = Indent(lines[above]);
            }
        }

        return true;
    }

    /// <summary>Documentation right above a declaration.</summary>
    private static IEnumerable<string> Comment(string[] lines, int at) =>
        lines.Take(at).Reverse().Select(line => line.TrimStart()).TakeWhile(line => line.StartsWith("///", StringComparison.Ordinal));

    /// <summary>A declaration to its closing brace, or to what stands next on its indent; comments left out.</summary>
    private static IEnumerable<string> Member(string[] lines, int at)
    {
        int indent = Indent(lines[at]);
        yield return lines[at];
        foreach (string line in lines.Skip(at + 1).Where(line => line.Trim().Length > 0))
        {
            string text = line.TrimStart();
            if (Indent(line) < indent || (Indent(line) == indent && text[0] is not ('{' or ')' or ':')))
            {
                yield break;
            }

            if (!text.StartsWith("//", StringComparison.Ordinal))
            {
                yield return line;
            }
        }
    }

    [GeneratedRegex(
        @"^\s*(?:(?:public|internal|private|protected|static|sealed|abstract|readonly|partial)\s+)+(?:class|record|struct|enum)\b"
    )]
    private static partial Regex TypeDeclaration();
}

using System.Text.RegularExpressions;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Notes;

namespace Coilwright.Formats.Notes;

/// <summary>What the heading of a column says: its name, and perhaps a unit.</summary>
internal static partial class NoteHeading
{
    /// <summary>The role that a heading names; null when it names none.</summary>
    /// <param name="header">The heading.</param>
    /// <param name="isExact">True when all of it is one of the role's names.</param>
    public static NoteRole? RoleOf(string header, out bool isExact)
    {
        string name = Plain(Bracketed().Replace(header, " "));
        string whole = name.Length > 0 ? name : Plain(header);
        NoteRole? exact = NoteRole.All.FirstOrDefault(role => role.Names.Contains(whole, StringComparer.Ordinal));
        isExact = exact is not null;
        if (exact is not null)
        {
            return exact;
        }

        string[] words = [.. Words().Matches(header).Select(word => Plain(word.Value)).Where(word => word.Length > 0)];
        return NoteRole.All.FirstOrDefault(role =>
            role.Names.Any(known => known.Length > 1 && words.Contains(known, StringComparer.Ordinal))
        ) ?? NoteRole.All.FirstOrDefault(role => words.Length > 0 && role.Names.Contains(words[0], StringComparer.Ordinal));
    }

    /// <summary>The unit that a heading names for a kind of quantity; empty when it names none.</summary>
    public static string UnitOf(string header, QuantityKind kind)
    {
        IEnumerable<string> said = Bracketed()
            .Matches(header)
            .Select(match => match.Groups[1].Value)
            .Concat(header.Split(['/', ' ', '_', ','], StringSplitOptions.RemoveEmptyEntries).Reverse())
            .Append(header);
        return said.Select(text => SymbolOf(text, kind)).FirstOrDefault(symbol => symbol.Length > 0) ?? "";
    }

    /// <summary>The unit that a text names, as it is written everywhere else; empty when it names none of this kind.</summary>
    public static string SymbolOf(string text, QuantityKind kind)
    {
        string unit = text.Trim();
        return
            unit.Length > 0
            && !unit.Any(char.IsAsciiDigit)
            && QuantityParser.TryParse("1 " + unit, kind, unitRequired: true, out Entered entered, out _)
            ? entered.UnitTyped
            : "";
    }

    private static string Plain(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToLowerInvariant().Replace('Ω', 'ω');

    [GeneratedRegex(@"[\[(]([^\])]*)[\])]", RegexOptions.CultureInvariant)]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"\p{L}+", RegexOptions.CultureInvariant)]
    private static partial Regex Words();
}

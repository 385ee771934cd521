using System.Text.RegularExpressions;

namespace Coilwright.Tests.Architecture;

/// <summary>Which files of the sources know a kind of event: what a person who adds one has to touch at most.</summary>
internal static class EventFiles
{
    /// <summary>Files that name the kind as a type: made, looked for, matched, declared or listed.</summary>
    public static IReadOnlyList<string> Naming(string kind, IEnumerable<(string Path, string Text)> sources)
    {
        string used = $@"(\bnew |<|\bis |\bnot |\bor |\btypeof\(|\brecord ){kind}\b(?!\s*=[^=>])",
            declared = $@"\b{kind}\??(\[\])? [a-z]\w*\s*(=|;|,|\)|\]|\{{|in\b)";
        Regex asType = new($"{used}|{declared}", RegexOptions.CultureInvariant);
        return [.. from source in sources where asType.IsMatch(Regex.Replace(source.Text, "//[^\n]*", "")) select source.Path];
    }
}

using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Parts;

/// <summary>A choice that changes parts and labels and no number of the forecast.</summary>
/// <param name="Name">What is chosen, for example "bobbin colour".</param>
/// <param name="Value">What it is, for example "slate".</param>
public sealed record PartOption(string Name, string Value)
{
    private const int Longest = 200;

    /// <summary>As it is typed: "bobbin colour: slate".</summary>
    public string Line => $"{Name}: {Value}";

    /// <summary>Number of strings, where that is what is chosen; null elsewhere.</summary>
    public int? Strings =>
        Is("strings") && int.TryParse(Value, NumberStyles.None, CultureInfo.InvariantCulture, out int count) && count is >= 1 and <= 12
            ? count
            : null;

    /// <summary>True when the option's name holds this word.</summary>
    public bool Is(string word) => Name.Contains(word, StringComparison.OrdinalIgnoreCase);

    /// <summary>The options of a recipe's tags, with those given in place of any of the same name.</summary>
    /// <param name="recipe">The recipe; its tags "name: value" are options.</param>
    /// <param name="lines">More of them, each "name: value".</param>
    /// <param name="problems">Where problems go: "option".</param>
    public static IReadOnlyList<PartOption> Of(Recipe recipe, IEnumerable<string> lines, ICollection<Problem> problems)
    {
        Dictionary<string, PartOption> all = new(StringComparer.OrdinalIgnoreCase);
        foreach (PartOption option in recipe.Tags.Select(Read).OfType<PartOption>())
        {
            all[option.Name] = option;
        }

        foreach (string line in lines.Select(line => line.Trim()).Where(line => line.Length > 0))
        {
            if (Read(line) is not { } option || line.Length > Longest)
            {
                problems.Add(
                    new Problem(
                        "option",
                        "a name and a value are needed",
                        line,
                        "name: value, for example cover: nickel silver; 200 letters at most"
                    )
                );
            }
            else if (option.Is("strings") && option.Strings is null)
            {
                problems.Add(new Problem("option", "how many strings?", line, "strings: 1 to 12"));
            }
            else
            {
                all[option.Name] = option;
            }
        }

        return [.. all.Values];
    }

    private static PartOption? Read(string line) =>
        line.Split(':', 2) is [var name, var value] && name.Trim().Length > 0 && value.Trim().Length > 0
            ? new PartOption(name.Trim(), value.Trim())
            : null;
}

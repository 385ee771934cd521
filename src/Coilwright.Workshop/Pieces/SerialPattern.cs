using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Pieces;

/// <summary>
/// The shop's own pattern of serials, for example "{yy}{ww}-{n:000}": year, week of the year, day of the year, a running number, the
/// recipe's short name.
/// </summary>
/// <param name="Text">The pattern as typed.</param>
public sealed partial record SerialPattern(string Text)
{
    private const string Example =
        "for example {yy}{ww}-{n:000}, with {yyyy}, {yy}, {mm}, {dd}, {ww}, {ddd}, {recipe} and one {n} or {n:000}";

    /// <summary>Every problem with the pattern; none when serials can be made of it.</summary>
    public IReadOnlyList<Problem> Check()
    {
        List<Problem> problems = [];
        string[] words = [.. Field().Matches(Text).Select(match => match.Groups[1].Value)];
        if (words.Count(word => word.StartsWith('n')) != 1)
        {
            problems.Add(new Problem("serials", "a pattern needs exactly one running number", Text, Example));
        }

        problems.AddRange(
            words
                .Where(word => !Known().IsMatch(word))
                .Select(word => new Problem("serials", $"{{{word}}} is nothing a serial can hold", Text, Example))
        );
        if (Text.Length > 40 || Field().Replace(Text, "").Any(letter => letter is '{' or '}' or < ' ' or > '~'))
        {
            problems.Add(new Problem("serials", "the pattern is too long, or holds a sign that a bar code cannot", Text, Example));
        }

        return problems;
    }

    /// <summary>
    /// The serial of a number on a day. Weeks are those of ISO 8601, and {yyyy} and {yy} beside {ww} are the week's year.
    /// </summary>
    /// <param name="number">Running number, 1 or more.</param>
    /// <param name="day">Day at the shop.</param>
    /// <param name="recipe">Short name of the recipe.</param>
    public string Make(int number, DateOnly day, string recipe = "")
    {
        int year = Text.Contains("{ww}", StringComparison.Ordinal) ? ISOWeek.GetYear(day.ToDateTime(TimeOnly.MinValue)) : day.Year;
        return Field()
            .Replace(Text, match => match.Groups[1].Value switch
                {
                    "yyyy" => Digits(year, 4),
                    "yy" => Digits(year % 100, 2),
                    "mm" => Digits(day.Month, 2),
                    "dd" => Digits(day.Day, 2),
                    "ww" => Digits(ISOWeek.GetWeekOfYear(day.ToDateTime(TimeOnly.MinValue)), 2),
                    "ddd" => Digits(day.DayOfYear, 3),
                    "recipe" => recipe,
                    { } word => Digits(number, word.Contains(':', StringComparison.Ordinal) ? word.Length - 2 : 1),
                });
    }

    private static string Digits(int value, int width) => value.ToString(CultureInfo.InvariantCulture).PadLeft(width, '0');

    [GeneratedRegex(@"\{([^{}]*)\}")]
    private static partial Regex Field();

    [GeneratedRegex(@"^(yyyy|yy|mm|dd|ww|ddd|recipe|n|n:0{1,8})$")]
    private static partial Regex Known();
}

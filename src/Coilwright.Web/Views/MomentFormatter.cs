using System.Text.RegularExpressions;

namespace Coilwright.Web.Views;

/// <summary>A sentence parted at its days and hours, so that a page keeps each on one line.</summary>
public static partial class MomentFormatter
{
    /// <summary>The parts in order, with whether each is a day and hour.</summary>
    public static IReadOnlyList<(string Text, bool IsMoment)> Parts(string words) =>
        [.. Moment().Split(words).Select(part => (part, Moment().IsMatch(part)))];

    [GeneratedRegex(@"(\d{4}-\d\d-\d\d \d\d:\d\d)")]
    private static partial Regex Moment();
}

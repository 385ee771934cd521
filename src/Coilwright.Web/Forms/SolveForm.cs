using System.Globalization;
using Coilwright.Application.Solving;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Solving;
using Microsoft.AspNetCore.Http;

namespace Coilwright.Web.Forms;

/// <summary>A recipe asked backwards, as a form: a row for each want and a tick for each thing that may change.</summary>
/// <param name="Offer">What the recipe can be asked about.</param>
/// <param name="Rows">Wants as typed.</param>
/// <param name="Ticks">What may change.</param>
public sealed record SolveForm(SearchOffer Offer, IReadOnlyList<WantRow> Rows, IReadOnlyList<ChoiceTick> Ticks)
{
    private const int FewestRows = 2;

    /// <summary>Rows and ticks as they were understood; null before anything was asked.</summary>
    public AskedSearch? Asked { get; init; }

    /// <summary>What is wrong with the whole, for the list on top.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>True when rows and ticks stand in an address, in place of the text of a question.</summary>
    public static bool IsIn(IQueryCollection query) => query.ContainsKey("how");

    /// <summary>The form as it was sent, after the button that was pressed: a row more, a row less, or the question itself.</summary>
    public static SolveForm Of(IQueryCollection query, SearchOffer offer)
    {
        string[] quantities = All(query, "quantity"),
            hows = All(query, "how"),
            values = All(query, "value"),
            ends = All(query, "upto");
        List<WantRow> rows =
        [
            .. hows.Take(WantRows.Most)
                .Select((how, at) => new WantRow(At(quantities, at), HowOf(how), At(values, at).Trim(), At(ends, at).Trim())),
        ];
        if (int.TryParse(query["away"].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out int away) && away < rows.Count)
        {
            rows.RemoveAt(away);
        }

        if (query.ContainsKey("more") && rows.Count < WantRows.Most)
        {
            rows.Add(WantRow.Blank);
        }

        return new SolveForm(offer, AtLeastOne(rows), [.. offer.Choices.Select(one => TickOf(query, one))]);
    }

    /// <summary>The form of a question in an address.</summary>
    public static SolveForm Of(SolveAddress address, SearchOffer offer)
    {
        string[] known = [.. offer.Now.Keys];
        WantRow[] rows =
        [
            .. address
                .Objective.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                .Select(line => WantRow.Of(line, known)),
        ];
        WantRow[] blank = [.. Enumerable.Repeat(WantRow.Blank, rows.Length == 0 ? FewestRows : 0)];
        return new SolveForm(offer, [.. rows, .. blank], ChoiceTick.Of(offer.Choices, address.Vary));
    }

    /// <summary>Problems of one row or tick.</summary>
    public IEnumerable<Problem> ProblemsOf(string field) => Problems.Where(problem => problem.Field == field);

    private static List<WantRow> AtLeastOne(List<WantRow> rows) => rows.Count > 0 ? rows : [WantRow.Blank];

    private static ChoiceTick TickOf(IQueryCollection query, OfferedChoice offered)
    {
        string[] names = All(query, offered.Key + "-name");
        return new ChoiceTick(
            offered,
            All(query, "may").Contains(offered.Key),
            query[offered.Key + "-from"].ToString().Trim(),
            query[offered.Key + "-to"].ToString().Trim(),
            [.. offered.Names.Where(names.Contains)]
        );
    }

    private static WantHow HowOf(string typed) => Enum.TryParse(typed, ignoreCase: true, out WantHow how) ? how : WantHow.About;

    private static string[] All(IQueryCollection query, string field) => [.. query[field].Select(value => value ?? "")];

    private static string At(string[] values, int at) => at < values.Length ? values[at] : "";
}

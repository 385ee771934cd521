using Coilwright.Analysis.Solving;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.Solving;

namespace Coilwright.Application.Solving;

/// <summary>A person fills in what is wanted and what may change, row by row and tick by tick.</summary>
public sealed class AskSearch
{
    /// <summary>Offers kept; what a recipe has now is a forecast of it.</summary>
    private const int MostKept = 16;

    private readonly Dictionary<string, SearchOffer> _offers = [];
    private readonly Lock _gate = new();

    /// <summary>What a recipe can be asked about.</summary>
    public SearchOffer Offer(Recipe recipe, CancellationToken cancel)
    {
        lock (_gate)
        {
            if (_offers.TryGetValue(recipe.Json, out SearchOffer? known))
            {
                return known;
            }
        }

        SearchOffer offer = SearchOffer.Of(recipe, UsualLoad.Player.Load, cancel);
        lock (_gate)
        {
            if (_offers.Count >= MostKept)
            {
                _offers.Clear();
            }

            return _offers[recipe.Json] = offer;
        }
    }

    /// <summary>Reads the rows and ticks; everything that is wrong with them is told at once, each with its row.</summary>
    /// <param name="offer">What the recipe can be asked about.</param>
    /// <param name="rows">Wants, as typed.</param>
    /// <param name="ticks">What may change.</param>
    public AskedSearch Read(SearchOffer offer, IReadOnlyList<WantRow> rows, IReadOnlyList<ChoiceTick> ticks)
    {
        List<Problem> problems = [];
        IReadOnlyList<Objective?> understood = WantRows.Read(rows, offer.Now, problems);
        string vary = ChoiceTick.Read(ticks, problems);
        return new AskedSearch(string.Join('\n', rows.Where(row => !row.IsBlank).Select(row => row.Line)), vary, understood, problems);
    }
}

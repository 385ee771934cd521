using Coilwright.Analysis.Forecasts;
using Coilwright.Application.Winding;
using Coilwright.Papers.Cards;
using Coilwright.Papers.Parts;
using Coilwright.Papers.Sheets;
using Coilwright.Papers.Spec;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Parts;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Application.Printing;

/// <summary>A person prints a paper of a recipe.</summary>
public sealed class PrintRecipePaper(SetUpRecipe setUp)
{
    private const int CurvePoints = 300;

    /// <summary>The forecast that a spec sheet shows, with its curves.</summary>
    public static ForecastOptions OfSpec { get; } = new() { CurvePoints = CurvePoints, Strings = false };

    private static ForecastOptions OfParts { get; } = new() { Strings = false };

    /// <summary>The spec sheet: forecast values, load, response.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="load">What hangs on the pickup.</param>
    /// <param name="heading">Shop, revision, day.</param>
    /// <param name="hideTurns">Leaves the turns out, also where the recipe does not ask for it.</param>
    /// <param name="cancel">Stops it.</param>
    public Sheet Spec(Recipe recipe, LoadCircuit load, SheetHeading heading, bool hideTurns, CancellationToken cancel) =>
        SpecSheet.Of(recipe, Predict(recipe, load, OfSpec, cancel), load, heading, hideTurns);

    /// <summary>The recipe card: what a winder needs.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="parts">What the shop knows of its parts; null without a shop.</param>
    /// <param name="heading">Shop, revision, day.</param>
    /// <param name="status">State of the revision.</param>
    /// <param name="cancel">Stops it.</param>
    public Sheet Card(Recipe recipe, KnownParts? parts, SheetHeading heading, RecipeStatus status, CancellationToken cancel) =>
        RecipeCard.Of(recipe, setUp.SetUp(recipe, parts, cancel: cancel) with { Heading = heading }, status);

    /// <summary>The parts list of a number of pieces.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="parts">What the shop knows of its parts; null without a shop.</param>
    /// <param name="options">Choices that change parts.</param>
    /// <param name="count">How many pieces.</param>
    /// <param name="heading">Shop, revision, day.</param>
    /// <param name="cancel">Stops it.</param>
    public Sheet Parts(
        Recipe recipe,
        KnownParts? parts,
        IReadOnlyList<PartOption> options,
        int count,
        SheetHeading heading,
        CancellationToken cancel
    )
    {
        Prediction prediction = Predict(parts is null ? recipe : parts.Fill(recipe), null, OfParts, cancel);
        return PartsSheet.Of(recipe.Name, PartsList.Of(recipe, prediction, options, count), heading, recipe.Name);
    }

    /// <summary>The forecast that a paper rests on.</summary>
    internal static Prediction Predict(Recipe recipe, LoadCircuit? load, ForecastOptions options, CancellationToken cancel) =>
        Forecaster.Predict(RecipeModelBuilder.ToModel(recipe), load, options, cancel);

    /// <summary>The forecast that a parts list rests on, for its wire.</summary>
    internal static Prediction PredictParts(Recipe recipe, CancellationToken cancel) => Predict(recipe, null, OfParts, cancel);
}

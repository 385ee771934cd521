using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Solving;

/// <summary>Something of a recipe that may change in a search, for a form.</summary>
/// <param name="What">What.</param>
/// <param name="Now">What it is in the recipe, in words.</param>
/// <param name="From">Lower end that is taken when none is given; empty for a choice from a list.</param>
/// <param name="To">Upper end of the same.</param>
/// <param name="Names">Keys of a list to choose from; empty for a range, or where there is nothing to choose.</param>
public sealed record OfferedChoice(Choice What, string Now, string From, string To, IReadOnlyList<string> Names)
{
    /// <summary>Its name in a question: "windingHeight".</summary>
    public string Key =>
        What switch
        {
            Choice.Turns => "turns",
            Choice.Gauge => "gauge",
            Choice.Build => "build",
            _ => Variants.Field(What),
        };

    /// <summary>Its name for people.</summary>
    public string Label =>
        What switch
        {
            Choice.Turns => "Turns",
            Choice.Gauge => "Wire gauge",
            Choice.Build => "Film of the wire",
            Choice.Magnet => "Magnets",
            Choice.Connection => "Series or parallel",
            Choice.WindingHeight => "Winding height",
            Choice.CoreWidth => "Core width",
            _ => "Core length",
        };

    /// <summary>True where it has a lower and an upper end.</summary>
    public bool IsRange => From.Length > 0;

    /// <summary>In what a bare number counts; empty for turns.</summary>
    public string Unit => What == Choice.Turns ? "" : "mm";

    /// <summary>Everything of a recipe that may change.</summary>
    public static IReadOnlyList<OfferedChoice> Of(Recipe recipe) =>
        [
            TurnsOf(recipe),
            .. WiresOf(recipe.Coils[0].Wire),
            .. MagnetsOf(recipe),
            .. recipe.Coils.Count < 2
                ? Array.Empty<OfferedChoice>()
                : [new OfferedChoice(Choice.Connection, recipe.Connection.ToString().ToLowerInvariant(), "", "", [])],
            .. new[] { Choice.WindingHeight, Choice.CoreWidth, Choice.CoreLength }.Select(what => SizeOf(recipe.Coils[0].Bobbin, what)),
        ];

    private static OfferedChoice TurnsOf(Recipe recipe)
    {
        int now = (int)Math.Round(recipe.Coils[0].Winding.Turns);
        (int fewest, int most) = RecipeSolver.UsualTurns(now);
        return new OfferedChoice(Choice.Turns, Count(now), Count(fewest), Count(most), []);
    }

    private static OfferedChoice[] WiresOf(RecipeWire own)
    {
        (Physics.Wire.WireSize size, IReadOnlyList<Physics.Wire.WireSize> near) = Variants.WiresNear(own);
        string[] builds = [.. near.SelectMany(one => one.Builds.Keys).Where(name => name is not "quad").Distinct()];
        return
        [
            new OfferedChoice(Choice.Gauge, size.Gauge, "", "", [.. near.Select(one => one.Gauge)]),
            new OfferedChoice(Choice.Build, KeyLabels.Of(own.Build), "", "", builds),
        ];
    }

    private static OfferedChoice[] MagnetsOf(Recipe recipe) =>
        new RecipeEdit(recipe.Json).HasMagnets ? [new OfferedChoice(Choice.Magnet, "", "", "", Variants.Grades)] : [];

    private static OfferedChoice SizeOf(RecipeBobbin bobbin, Choice what)
    {
        double now = Variants.SizeOf(bobbin, what);
        (double low, double high) = Variants.UsualSize(now);
        return new OfferedChoice(what, RecipeEdit.Millimetres(now), RecipeEdit.Millimetres(low), RecipeEdit.Millimetres(high), []);
    }

    private static string Count(int turns) => turns.ToString("#,##0", CultureInfo.InvariantCulture);
}

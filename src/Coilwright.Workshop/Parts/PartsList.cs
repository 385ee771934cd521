using Coilwright.Analysis.Forecasts;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Parts;

/// <summary>
/// What a number of pickups is made of, by its recipe and its options. Options change this list and labels; the forecast does not hear
/// them.
/// </summary>
/// <param name="Count">How many pieces, 1 to 100,000.</param>
/// <param name="Parts">Parts that are counted.</param>
/// <param name="Wire">Wire that is weighed.</param>
/// <param name="Options">Choices as they stand.</param>
/// <param name="Notes">What a person should know of them.</param>
public sealed record PartsList(
    int Count,
    IReadOnlyList<PartLine> Parts,
    IReadOnlyList<WireLine> Wire,
    IReadOnlyList<PartOption> Options,
    IReadOnlyList<string> Notes
)
{
    /// <summary>Most pieces of one list.</summary>
    public const int MostPieces = 100_000;

    /// <summary>The list.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="prediction">Its forecast, for the wire.</param>
    /// <param name="options">Choices.</param>
    /// <param name="count">How many pieces, 1 to 100,000.</param>
    public static PartsList Of(Recipe recipe, Prediction prediction, IReadOnlyList<PartOption> options, int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, MostPieces);
        PartLine[] parts =
        [
            .. Bobbins(recipe, options),
            .. Poles(recipe, options),
            .. Magnets(recipe),
            .. Metalwork(recipe, options),
            .. Leads(options),
            .. Potting(recipe),
        ];
        return new PartsList(count, parts, [.. Wires(recipe, prediction)], options, [.. NotesOf(recipe, options)]);
    }

    private static IEnumerable<PartLine> Bobbins(Recipe recipe, IReadOnlyList<PartOption> options) =>
        Alike(
            recipe.Coils.Select(coil =>
                (
                    "bobbin",
                    coil.Name,
                    $"{Or(KeyLabels.Of(coil.Bobbin.Material), "material not stated")}, core {Mm(coil.Bobbin.CoreLength)} × "
                        + $"{Mm(coil.Bobbin.CoreWidth)}, winding height {Mm(coil.Bobbin.WindingHeight)}",
                    1
                )
            ),
            Chosen(options, "bobbin")
        );

    private static IEnumerable<PartLine> Poles(Recipe recipe, IReadOnlyList<PartOption> options)
    {
        int? strings = options.Select(option => option.Strings).FirstOrDefault(count => count is not null);
        IReadOnlyList<string> chosen = [.. Chosen(options, "pole"), .. Chosen(options, "strings")];
        return Alike(
            recipe.Coils.SelectMany(coil =>
                coil.Poles.Select(pole =>
                {
                    int own = pole.PositionsM.Count;
                    string width = pole.Width is { } wide ? Mm(wide) + " × " : "",
                        head = pole.HeadDiameter is { } across ? $", head ⌀ {Mm(across)}" : "";
                    string size =
                        pole.Shape == PoleShape.Blade
                            ? $"{width}{Mm(pole.Diameter)} × {Mm(pole.Length)}"
                            : $"⌀ {Mm(pole.Diameter)} × {Mm(pole.Length)}{head}";
                    string charged = pole.NorthUp switch
                    {
                        > 0 => ", charged north up",
                        < 0 => ", charged south up",
                        _ => "",
                    };
                    // A row of one pole a string follows the number of strings that was chosen.
                    return (
                        pole.Shape.ToString().ToLowerInvariant(),
                        coil.Name,
                        $"{KeyLabels.Of(pole.Material.Name)}, {size}{charged}",
                        strings is { } many && own == (int)(recipe.Strings?.Count ?? 0) ? many : own
                    );
                })
            ),
            chosen
        );
    }

    private static IEnumerable<PartLine> Magnets(Recipe recipe) =>
        Alike(
            recipe.Magnets.Select(magnet =>
                (
                    "bar magnet",
                    "",
                    $"{KeyLabels.Of(magnet.Material.Name)}, {Mm(magnet.Size.X)} × {Mm(magnet.Size.Y)} × {Mm(magnet.Size.Z)}, charged "
                        + $"along {magnet.Magnetised.TrimStart('-', '+')}",
                    1
                )
            ),
            []
        );

    private static IEnumerable<PartLine> Metalwork(Recipe recipe, IReadOnlyList<PartOption> options)
    {
        foreach (RecipeMetalwork part in recipe.Metalwork)
        {
            string name = part.Shape switch
            {
                MetalworkShape.Cover => "cover",
                MetalworkShape.Plate => "base plate",
                _ => "keeper",
            };
            string size = part is { Shape: MetalworkShape.Keeper, Size: { } bar }
                ? $"{Mm(bar.X)} × {Mm(bar.Y)} × {Mm(bar.Z)}"
                : $"{Mm(part.Length)} × {Mm(part.Width)}, {Mm(part.Thickness)} thick";
            yield return new PartLine(
                name,
                $"{KeyLabels.Of(part.Material.Name)}, {size}",
                1,
                part.Shape == MetalworkShape.Cover ? Chosen(options, "cover") : []
            );
        }

        if (recipe.Metalwork.All(part => part.Shape != MetalworkShape.Cover) && Chosen(options, "cover") is { Count: > 0 } chosen)
        {
            yield return new PartLine("cover", "as chosen; not in the recipe", 1, chosen);
        }
    }

    private static IEnumerable<PartLine> Leads(IReadOnlyList<PartOption> options) =>
        [
            new PartLine(
                "leads",
                Chosen(options, "lead").Count > 0 ? "one set, as chosen" : "one set; none chosen",
                1,
                Chosen(options, "lead")
            ),
        ];

    private static IEnumerable<PartLine> Potting(Recipe recipe) =>
        recipe.Potting is { Kind: not ("none" or "air") } potting
            ? [new PartLine("potting", $"{potting.Kind}, as the bath takes it", 1, [])]
            : [];

    private static IEnumerable<WireLine> Wires(Recipe recipe, Prediction prediction)
    {
        foreach (
            var same in recipe
                .Coils.Select((coil, at) => (Coil: coil, Forecast: prediction.Coils[at]))
                .GroupBy(one => WireName(one.Coil.Wire))
        )
        {
            double length = same.Sum(one => one.Forecast.WireLength.Value),
                mass = same.Sum(one => one.Forecast.WireMass.Value);
            yield return new WireLine(
                same.Key,
                [.. same.Select(one => one.Coil.Name)],
                length,
                mass,
                same.Sum(one => (one.Forecast.WireMass.Estimate.High - one.Forecast.WireMass.Estimate.Low) / 2) / mass
            );
        }
    }

    private static string WireName(RecipeWire wire)
    {
        string measured = wire.BareDiameter is { } bare ? $"⌀ {Mm(bare)} bare" : "as measured",
            size = wire.Gauge.Length > 0 ? wire.Gauge : measured;
        return string.Join(", ", size, KeyLabels.Of(wire.Insulation), KeyLabels.Of(wire.Build));
    }

    private static IEnumerable<string> NotesOf(Recipe recipe, IReadOnlyList<PartOption> options)
    {
        if (options.Count > 0)
        {
            yield return "Options change this list and the labels. The forecast is that of the recipe and does not hear them.";
        }

        if (
            options.Select(option => option.Strings).FirstOrDefault(count => count is not null) is { } strings
            && recipe.Strings is { } own
            && strings != (int)own.Count
        )
        {
            yield return $"The recipe is for {own.Count:0} strings: for its numbers with {strings} make a variant of it.";
        }

        if (Chosen(options, "cover").Count > 0 && recipe.Metalwork.All(part => part.Shape != MetalworkShape.Cover))
        {
            yield return "The recipe has no cover: one of metal takes treble and output, which its forecast does not "
                + "say; make a variant of it.";
        }
    }

    /// <summary>Parts of one kind that are made alike stand in one line, with the coils they belong to.</summary>
    private static IEnumerable<PartLine> Alike(
        IEnumerable<(string Kind, string Coil, string What, int Count)> parts,
        IReadOnlyList<string> options
    ) =>
        parts
            .GroupBy(part => (part.Kind, part.What))
            .Select(same => new PartLine(
                string.Join(
                    ", ",
                    new[]
                    {
                        same.Key.Kind,
                        string.Join(" and ", same.Select(part => part.Coil).Where(coil => coil.Length > 0).Distinct()),
                    }.Where(word => word.Length > 0)
                ),
                same.Key.What,
                same.Sum(part => part.Count),
                options
            ));

    private static IReadOnlyList<string> Chosen(IReadOnlyList<PartOption> options, string word) =>
        [.. options.Where(option => option.Is(word)).Select(option => option.Line)];

    private static string Mm(Entered length) =>
        length.IsKnown ? QuantityParser.FormatIn(length.Si, QuantityKind.Length, "mm") : "not stated";

    private static string Or(string text, string otherwise) => text.Length > 0 ? text : otherwise;
}

using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;

namespace Coilwright.Web.Forms;

/// <summary>A spool asked about: one of the shelf, or a resistance per metre as typed.</summary>
/// <param name="Spool">Label of the spool; empty for none.</param>
/// <param name="OhmPerM">Resistance per metre as typed; empty for none.</param>
public sealed record HoldForm(string Spool, string OhmPerM)
{
    /// <summary>95 % doubt of a typed resistance per metre, as a recipe's. Common practice, no source.</summary>
    private const double TypedFraction = 0.005;

    private const double LeastOhmPerM = 0.05,
        MostOhmPerM = 250;

    private static readonly Limits s_range = new(QuantityKind.ResistancePerLength, LeastOhmPerM, MostOhmPerM, "Ω/m", "5.544 Ω/m");

    /// <summary>What was wrong.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>What a metre reads at 20 °C; null when nothing was asked or something was wrong.</summary>
    public Estimate? Read { get; init; }

    /// <summary>What a person should know before taking it.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Beginning of the sentence that tells it.</summary>
    public string Words => Spool.Length > 0 ? $"spool {Spool} reads" : "as typed,";

    /// <summary>What the wire is called in a reason.</summary>
    public string Name => Spool.Length > 0 ? $"spool {Spool}" : OhmPerM;

    /// <summary>Reads the question; a spool named goes before what was typed.</summary>
    public static HoldForm Of(string? spool, string? typed, IReadOnlyList<SpoolStatus> shelf, Recipe recipe)
    {
        HoldForm form = new((spool ?? "").Trim(), (typed ?? "").Trim());
        if (form.Spool.Length > 0)
        {
            return form.FromShelf(shelf, recipe);
        }

        return form.OhmPerM.Length > 0 ? form.FromText() : form;
    }

    private HoldForm FromShelf(IReadOnlyList<SpoolStatus> shelf, Recipe recipe)
    {
        SpoolStatus? found = shelf.FirstOrDefault(one => string.Equals(one.Spool.Label, Spool, StringComparison.OrdinalIgnoreCase));
        if (found?.Measure is not { } measure)
        {
            string why = found is null ? "no spool of this label is on the shelf" : "this spool has not been measured";
            return this with
            {
                Problems =
                [
                    new Problem(
                        "spool",
                        why,
                        Spool,
                        string.Join(", ", shelf.Where(one => one.Measure is not null).Select(one => one.Spool.Label))
                    ),
                ],
            };
        }

        string[] gauges =
        [
            .. recipe.Coils.Select(coil => coil.Wire.Gauge).Where(gauge => gauge.Length > 0 && gauge != found.Spool.Gauge).Distinct(),
        ];
        return this with
        {
            Read = measure.OhmPerM,
            Cautions =
                gauges.Length == 0
                    ? []
                    :
                    [
                        $"Spool {found.Spool.Label} is {found.Spool.Gauge}, the recipe is wound with {string.Join(" and ", gauges)}: "
                            + $"thickness and film differ too, and the numbers here leave that out.",
                    ],
        };
    }

    private HoldForm FromText()
    {
        bool read = QuantityParser.TryParse(OhmPerM, s_range, unitRequired: false, out Entered entered, out string why);
        if (read && s_range.Allows(entered.Si))
        {
            return this with { Read = Estimate.Within(entered.Si, TypedFraction, Basis.Measured) };
        }

        string wrong = read ? "too high or low for winding wire; check length and range" : why;
        return this with { Problems = [new Problem("ohmPerM", wrong, OhmPerM, $"{LeastOhmPerM} to {MostOhmPerM} Ω/m")] };
    }
}

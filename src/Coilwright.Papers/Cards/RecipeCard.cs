using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Papers.Formatting;
using Coilwright.Papers.Sheets;
using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Cards;

/// <summary>
/// The recipe card: what a winder needs of one revision on one page, its figures large enough to be read from a metre away.
/// </summary>
public static class RecipeCard
{
    /// <summary>The sheet.</summary>
    /// <param name="recipe">The revision's recipe.</param>
    /// <param name="setUp">The set-up of its coils; its heading gives shop, revision letter and day.</param>
    /// <param name="standing">State and reason of the revision.</param>
    public static Sheet Of(Recipe recipe, WindingSetUp setUp, RecipeStatus standing)
    {
        bool alone = setUp.Coils.Count == 1;
        int columns = alone ? 2 : 3;
        List<SheetPart> parts = [new FiguresPart([.. Status(recipe, setUp.Heading, standing, alone)], columns)];
        parts.AddRange(
            alone
                ? [new TitlePart("Coil " + setUp.Coils[0].Name), new FiguresPart([.. Coil(recipe, 0, setUp.Coils[0])], columns)]
                : Coils(recipe, setUp, columns)
        );
        parts.Add(new TitlePart(alone ? "Potting" : "Pickup and potting"));
        parts.Add(new FiguresPart([.. alone ? [] : Pickup(recipe), .. Potting(recipe.Potting)], columns));
        if (standing.ChangeReason.Length > 0)
        {
            parts.Add(new FiguresPart([new KeyFigure("Why this revision", standing.ChangeReason)], 1));
        }

        parts.Add(new CautionPart(string.Join(' ', Cautions.ForMaking(recipe.Potting?.Kind, ChargeRule.HasMagnets(recipe)))));
        return new Sheet("Recipe card", recipe.Name, setUp.Heading, parts, Sheet.CodeOf(recipe.Name));
    }

    private static IEnumerable<KeyFigure> Status(Recipe recipe, SheetHeading heading, RecipeStatus standing, bool alone)
    {
        yield return new KeyFigure(
            "Revision",
            heading.Revision.Length > 0 ? heading.Revision : "–",
            heading.Revision.Length > 0 ? "" : "in no shop's book"
        );
        yield return new KeyFigure(
            "State",
            standing.State.Length > 0 ? standing.State : "–",
            standing.Person.Length > 0 ? "by " + standing.Person : ""
        );
        if (!alone)
        {
            yield return new KeyFigure(
                "Coils joined",
                recipe.Connection switch
                {
                    Connection.Series => "in series",
                    Connection.Parallel => "in parallel",
                    _ => "singly",
                }
            );
        }
    }

    /// <summary>Of several coils what is alike on all is said once, so that the rest stays large and on the page.</summary>
    private static IEnumerable<SheetPart> Coils(Recipe recipe, WindingSetUp setUp, int columns)
    {
        KeyFigure[][] coils = [.. setUp.Coils.Select((coil, index) => Coil(recipe, index, coil).ToArray())];
        bool[] alike = [.. coils[0].Select((figure, at) => coils.All(coil => coil[at] == figure))];
        string names = string.Join(", ", setUp.Coils.Select(coil => coil.Name));
        if (alike.Contains(true))
        {
            yield return new TitlePart($"Every coil ({names})");
            yield return new FiguresPart([.. coils[0].Where((_, at) => alike[at])], columns);
        }

        for (int index = 0; index < coils.Length && alike.Contains(false); index++)
        {
            yield return new FiguresPart(
                [
                    .. coils[index]
                        .Where((_, at) => !alike[at])
                        .Select(figure => figure with { Label = $"Coil {setUp.Coils[index].Name}: {figure.Label}" }),
                ],
                columns
            );
        }
    }

    private static IEnumerable<KeyFigure> Coil(Recipe recipe, int index, CoilSetUp coil)
    {
        TensionAdvice tension = coil.Tension;
        double? speedRpm = coil.SpeedRpm;
        yield return new KeyFigure("Turns", coil.Turns.ToString("#,##0.##", CultureInfo.InvariantCulture));
        yield return new KeyFigure(
            "Wire",
            coil.Wire,
            $"{Bare(Mm(coil.BareDiameterM.Value))} bare / {Mm(coil.OverallDiameterM.Value)} overall"
        );
        yield return new KeyFigure(
            "Direction",
            coil.Direction == WindingDirection.Clockwise ? "clockwise" : "counter-clockwise",
            "seen from the top, start to finish"
        );
        yield return Ohms(VerdictLimits.Find(recipe, index, QuantityKey.DcResistance), coil.At20C);
        yield return Henries(VerdictLimits.Find(recipe, index, "inductance"), coil.Inductance);
        yield return new KeyFigure(
            "Pitch",
            Mm(coil.PitchM),
            $"{FigureFormatter.Value(coil.TurnsPerLayer)} turns per layer in "
                + $"{Mm(recipe.Coils[index].Bobbin.WindingHeight.Si)}{(coil.PitchStated ? "" : "; pitch from the lay")}"
        );
        yield return new KeyFigure(
            "Tension",
            Gf(tension.OwnN ?? tension.LowN),
            $"{(tension.OwnN is null ? "recipe states none; " : "")}band {Bare(Gf(tension.LowN))} – {Bare(Gf(tension.HighN))}, "
                + $"max {Gf(tension.MaximumN)}"
        );
        yield return new KeyFigure(
            "Speed",
            speedRpm is { } speed ? speed.ToString("#,##0", CultureInfo.InvariantCulture) + " rpm" : "–",
            coil.RunTimeS is { } time
                ? string.Create(CultureInfo.InvariantCulture, $"{time / 60:0.0} min a coil")
                : "not stated in the recipe"
        );
        yield return new KeyFigure("Build", FigureFormatter.Value(coil.Fill.Build), coil.Fill.Words);
        yield return new KeyFigure("Wire a coil takes", FigureFormatter.Value(coil.WireLength), FigureFormatter.Value(coil.WireMass));
    }

    private static KeyFigure Ohms(Target? target, ExpectedResistance cold)
    {
        string forecast = $"forecast {Ohm(cold.Expected.Value)}";
        return target is not null && cold is { LowOhm: { } low, HighOhm: { } high }
            ? new KeyFigure(
                "DC resistance at 20 °C",
                Ohm(target.Nominal.Si * Quantity.DcResistance.Factor(target)),
                $"{Ohm(low)} – {Ohm(high)} passes ({Part(target)}); {forecast}"
            )
            : new KeyFigure(
                "DC resistance at 20 °C",
                Ohm(cold.Expected.Value),
                $"forecast, 95 % from {Ohm(cold.Expected.Low)} to {Ohm(cold.Expected.High)}; no limit in the recipe"
            );
    }

    private static KeyFigure Henries(Target? target, Analysis.Forecasts.Figure forecast)
    {
        string usual = FigureFormatter.Value(VerdictLimits.UsualHz, "Hz");
        if (target is null)
        {
            string alone = $"forecast, 95 % {FigureFormatter.Interval(forecast)}; no limit in the recipe";
            return new KeyFigure($"Inductance at {usual}", FigureFormatter.Value(forecast), alone);
        }

        string at = Hertz(target) == usual ? "" : $"at {usual} ";
        string passes = $"{FigureFormatter.Value(target.Low, "H")} – {FigureFormatter.Value(target.High, "H")} passes ({Part(target)})";
        string note = $"{passes}; forecast {at}{FigureFormatter.Value(forecast)}";
        return new KeyFigure($"Inductance at {Hertz(target)}", FigureFormatter.Value(target.Nominal.Si, "H"), note);
    }

    private static IEnumerable<KeyFigure> Pickup(Recipe recipe)
    {
        if (recipe.Targets.GetValueOrDefault(QuantityKey.DcResistance) is { } ohm)
        {
            double factor = Quantity.DcResistance.Factor(ohm);
            yield return new KeyFigure(
                "DC resistance at 20 °C",
                Ohm(ohm.Nominal.Si * factor),
                $"{Ohm(ohm.Low * factor)} – {Ohm(ohm.High * factor)} passes ({Part(ohm)})"
            );
        }

        if (recipe.Targets.GetValueOrDefault("inductance") is { } henry)
        {
            yield return new KeyFigure(
                $"Inductance at {Hertz(henry)}",
                FigureFormatter.Value(henry.Nominal.Si, "H"),
                $"{FigureFormatter.Value(henry.Low, "H")} – {FigureFormatter.Value(henry.High, "H")} passes ({Part(henry)})"
            );
        }
    }

    private static IEnumerable<KeyFigure> Potting(RecipePotting? potting)
    {
        if (potting is null || potting.Kind is "none" or "air")
        {
            yield return new KeyFigure("Potting", "none");
            yield break;
        }

        string warm = potting.Temperature is { } bath ? $"{potting.Kind}, {Degrees(bath)}" : potting.Kind;
        yield return new KeyFigure(
            "Potting",
            warm,
            (potting.Temperature is null ? "no bath temperature, " : "")
                + (potting.Limit is { } limit ? $"never above {Degrees(limit)}" : "no limit stated: ask for the plastic's")
        );
        yield return new KeyFigure(
            "Time in it",
            potting.Time is { } time ? "at least " + QuantityParser.FormatIn(time.Si, QuantityKind.Duration, "min", 2) : "–",
            potting.Time is null ? "not stated in the recipe" : ""
        );
    }

    private static string Part(Target target) => string.Create(CultureInfo.InvariantCulture, $"±{100 * target.Tolerance:0.##} %");

    private static string Hertz(Target target) => FigureFormatter.Value(target.AtHz ?? VerdictLimits.UsualHz, "Hz");

    private static string Ohm(double ohm) => FigureFormatter.Value(ohm, "Ω");

    private static string Mm(double lengthM) => QuantityParser.FormatIn(lengthM, QuantityKind.Length, "mm");

    /// <summary>The number alone, where the unit follows.</summary>
    private static string Bare(string written) => written[..written.LastIndexOf(' ')];

    private static string Gf(double forceN) => QuantityParser.FormatIn(forceN, QuantityKind.Force, "gf");

    private static string Degrees(Entered celsius) => QuantityParser.Format(celsius.Si, QuantityKind.Temperature);
}

using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Readings;

/// <summary>A wanted value and the ends of what is accepted, SI.</summary>
/// <param name="Nominal">Wanted.</param>
/// <param name="Low">Lowest accepted.</param>
/// <param name="High">Highest accepted.</param>
/// <param name="IsTarget">True for the recipe's own target; false for the 95 % interval of the forecast.</param>
/// <param name="AtHz">Frequency it holds at; null for a resistance.</param>
public sealed record Band(double Nominal, double Low, double High, bool IsTarget, double? AtHz = null);

/// <summary>What a coil or a pickup is judged against. Resistance at 20 °C.</summary>
public sealed record VerdictLimits
{
    public required Band Resistance { get; init; }

    /// <summary>Null when it is neither wanted nor foretold.</summary>
    public Band? Inductance { get; init; }

    /// <summary>Turns of the coil; 0 when not known.</summary>
    public double NominalTurns { get; init; }

    /// <summary>How many coils in series the reading is taken across.</summary>
    public int CoilsInSeries { get; init; } = 1;

    /// <summary>What a good coil reads at a frequency in Hz; null when it cannot be foretold.</summary>
    public Func<double, ExpectedReading?> Expected { get; init; } = _ => null;

    /// <summary>
    /// Standard deviation of the wanted resistance with its wire's own left out, as a part of one: what a whole batch may be off by without
    /// a fault.
    /// </summary>
    public double OhmOffset { get; init; } = 0.006;

    /// <summary>True when the recipe's wire was measured.</summary>
    public bool WireMeasured { get; init; }

    /// <summary>Inductance without cores over inductance with them.</summary>
    public double AirRatio { get; init; } = 0.75;

    /// <summary>
    /// The resistance meter's own uncertainty (95 %), as a part of the reading: the guard band at each limit. Our assumption of a bench
    /// meter unless the shop says better.
    /// </summary>
    public double MeterPart { get; init; } = 0.001;

    /// <summary>Where they come from when they are kept with a batch; null for limits of the moment.</summary>
    public LimitsOrigin? Origin { get; init; }

    /// <summary>Limits for one coil of a recipe at the winder: its targets, and the forecast where it has none.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="coilIndex">Which coil, from 0.</param>
    public static VerdictLimits ForCoil(Recipe recipe, int coilIndex)
    {
        Forecasts forecasts = new(recipe);
        bool alone = recipe.Coils.Count == 1;
        return new VerdictLimits
        {
            Resistance = OfTarget(Find(recipe, coilIndex, QuantityKey.DcResistance), Quantity.DcResistance)
                ?? OfForecast(forecasts.Coil(coilIndex).DcResistance, null),
            Inductance = OfTarget(Find(recipe, coilIndex, QuantityKey.Inductance), Quantity.Inductance)
                ?? OfForecast(forecasts.Coil(coilIndex).Inductance, UsualHz),
            NominalTurns = recipe.Coils[coilIndex].Winding.Turns,
            Expected = new ExpectedReadings(recipe, alone ? null : coilIndex).At,
            OhmOffset = OffsetOf(Find(recipe, coilIndex, QuantityKey.DcResistance), () => forecasts.Coil(coilIndex).DcResistance),
            WireMeasured = recipe.Coils[coilIndex].Wire.ResistancePerLength is not null,
            AirRatio = forecasts.Coil(coilIndex).AirInductance.Value / forecasts.Coil(coilIndex).Inductance.Value,
        };
    }

    /// <summary>Limits for the whole pickup.</summary>
    public static VerdictLimits ForPickup(Recipe recipe)
    {
        if (recipe.Coils.Count == 1)
        {
            return ForCoil(recipe, 0);
        }

        Forecasts forecasts = new(recipe);
        return new VerdictLimits
        {
            Resistance = OfTarget(recipe.Targets.GetValueOrDefault(QuantityKey.DcResistance), Quantity.DcResistance)
                ?? OfForecast(forecasts.Pickup.DcResistance, null),
            Inductance = OfTarget(recipe.Targets.GetValueOrDefault(QuantityKey.Inductance), Quantity.Inductance)
                ?? OfForecast(forecasts.Pickup.Inductance, UsualHz),
            NominalTurns = recipe.Coils.Sum(coil => coil.Winding.Turns),
            CoilsInSeries = recipe.Connection == Connection.Series ? recipe.Coils.Count : 1,
            Expected = new ExpectedReadings(recipe, coilIndex: null).At,
            OhmOffset = OffsetOf(recipe.Targets.GetValueOrDefault(QuantityKey.DcResistance), () => forecasts.Pickup.DcResistance),
            WireMeasured = recipe.Coils.All(coil => coil.Wire.ResistancePerLength is not null),
            AirRatio = forecasts.Coil(0).AirInductance.Value / forecasts.Coil(0).Inductance.Value,
        };
    }

    /// <summary>The recipe's own target of one coil, as limits; null where it sets none. Forecasts nothing.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="coilIndex">Which coil, from 0.</param>
    /// <param name="quantity">Quantity name of the file format.</param>
    public static Band? TargetOf(Recipe recipe, int coilIndex, string quantity) =>
        OfTarget(Find(recipe, coilIndex, quantity), Quantity.Find(quantity));

    /// <summary>Where an inductance is read and forecast that names no frequency, Hz.</summary>
    public const double UsualHz = 1000;

    /// <summary>
    /// The inductance that a reading is held against: the recipe's target at its own frequency, else what a good coil reads there.
    /// </summary>
    /// <param name="atHz">Frequency of the reading; null for the usual one.</param>
    public (double? Henry, bool IsTarget) WantedInductance(double? atHz)
    {
        double hz = atHz ?? UsualHz;
        return Inductance is { IsTarget: true } band && Math.Abs(hz - (band.AtHz ?? hz)) <= 0.02 * hz
            ? (band.Nominal, true)
            : (Expected(hz)?.InductanceH, false);
    }

    /// <summary>How far a target may lie from where the shop's coils lie, as a part of one. Our assumption, no source.</summary>
    private const double TargetOffset = 0.006;

    /// <summary>
    /// A target is where a shop's coils lie; a forecast has its own doubt, of which the wire's part is a cause to be named and no offset.
    /// </summary>
    private static double OffsetOf(Target? target, Func<Figure> forecast)
    {
        if (target is not null)
        {
            return TargetOffset;
        }

        Figure figure = forecast();
        double wire = figure
            .Derivation.Inputs.Where(input =>
                input.Name.Contains("diameter", StringComparison.Ordinal) || input.Name.Contains("ohms per", StringComparison.Ordinal)
            )
            .Sum(input => input.VarianceShare);
        return Math.Max(TargetOffset, figure.Estimate.StandardDeviation / figure.Value * Math.Sqrt(Math.Max(0, 1 - wire)));
    }

    /// <summary>
    /// Which of a recipe's targets holds for one coil: its own, or the pickup's where the coil is the pickup. The one rule for verdict,
    /// pages and papers.
    /// </summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="coilIndex">Which coil, from 0.</param>
    /// <param name="quantity">Quantity name of the file format.</param>
    public static Target? Find(Recipe recipe, int coilIndex, string quantity)
    {
        bool alone = recipe.Coils.Count == 1 || (recipe.Connection == Connection.Single && coilIndex == 0);
        return recipe.Coils[coilIndex].Targets.GetValueOrDefault(quantity) ?? (alone ? recipe.Targets.GetValueOrDefault(quantity) : null);
    }

    private static Band? OfTarget(Target? target, Quantity? quantity)
    {
        if (target is null || quantity is null)
        {
            return null;
        }

        double comparable = quantity.Factor(target);
        return new Band(
            target.Nominal.Si * comparable,
            target.Low * comparable,
            target.High * comparable,
            IsTarget: true,
            quantity.IsComparedAt20C ? null : target.AtHz ?? UsualHz
        );
    }

    private static Band OfForecast(Figure figure, double? atHz) =>
        new(figure.Value, figure.Estimate.Low, figure.Estimate.High, IsTarget: false, atHz);

    /// <summary>Forecast of one recipe, made when first asked for.</summary>
    private sealed class Forecasts(Recipe recipe)
    {
        private readonly Lazy<Prediction> _usual = new(() =>
            Forecaster.Predict(RecipeModelBuilder.ToModel(recipe), load: null, new ForecastOptions { Strings = false })
        );

        public PickupForecast Pickup => _usual.Value.Pickup;

        public CoilForecast Coil(int index) => _usual.Value.Coils[index];
    }
}

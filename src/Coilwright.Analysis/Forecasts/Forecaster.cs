using System.Globalization;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Forecasts;

/// <summary>From a pickup's physics to a prediction: every value with interval, basis and derivation.</summary>
public static class Forecaster
{
    /// <summary>Foretells what a pickup will measure, at the model's temperature.</summary>
    /// <param name="model">The pickup; checked on entry by its reader.</param>
    /// <param name="load">What hangs on it; null leaves the loaded resonance out.</param>
    /// <param name="options">Engine and frequencies.</param>
    /// <param name="cancel">Stops the field solution.</param>
    public static Prediction Predict(
        PickupModel model,
        LoadCircuit? load,
        ForecastOptions? options = null,
        CancellationToken cancel = default
    )
    {
        options ??= new ForecastOptions();
        ForecastOptions full = options.FrequenciesHz.Any(f => Math.Abs(f - 1000) < 1e-6)
            ? options
            : options with
            {
                FrequenciesHz = [.. options.FrequenciesHz, 1000],
            };
        ForecastScene scene = new(model, full, cancel);
        ForecastInputs inputs = new(model, scene);
        ForecastVector vector = new(scene, inputs, load);
        NamedQuantity[] named = [.. NamedQuantity.CreateAll(scene, vector, load is not null)];
        PropagatedResult[] results = Propagation.FirstOrder(
            inputs.All,
            WithNamed(vector, named, inputs),
            [.. vector.Scatters(), .. named.Select(quantity => quantity.Scatter)]
        );
        Assembly assembly = new(model, scene, inputs, vector, results);
        return new Prediction(
            [.. Enumerable.Range(0, model.Coils.Count).Select(assembly.Coil)],
            assembly.Pickup(load is not null, options.FrequenciesHz),
            [
                .. ForecastWarnings.Find(model, scene),
                .. ForecastWarnings.OfPeaks(
                    results[vector.PlaceOf(PickupResult.UnloadedFrequency)].MayVanish,
                    results[vector.PlaceOf(PickupResult.LoadedFrequency)].MayVanish
                ),
            ]
        )
        {
            Named = named
                .Select((quantity, k) => new NamedFigure(quantity.Name, quantity.Unit, quantity.Told(results[vector.Count + k].Estimate)))
                .Where(figure => double.IsFinite(figure.Estimate.Value))
                .ToDictionary(figure => figure.Name, StringComparer.Ordinal),
            Curves = options.CurvePoints > 0 ? vector.Curves(Middle(inputs), options.CurvePoints) : [],
            Band = options.BandPoints > 0 ? vector.Band(options.BandPoints) : null,
            Pictures = options.Pictures ? PictureMaker.Make(model, scene, vector.Branch(Middle(inputs)), cancel) : null,
        };
    }

    /// <summary>
    /// The results with the named quantities behind them, so that those too have their interval from the one propagation.
    /// </summary>
    private static Action<double[], double[]> WithNamed(ForecastVector vector, NamedQuantity[] named, ForecastInputs inputs)
    {
        double[] middle = new double[vector.Count];
        vector.Evaluate(Middle(inputs), middle);
        Func<double[], double>[] read = [.. named.Select(quantity => quantity.Around(middle))];
        return (x, y) =>
        {
            vector.Evaluate(x, y);
            for (int k = 0; k < read.Length; k++)
            {
                y[vector.Count + k] = read[k](y);
            }
        };
    }

    private static double[] Middle(ForecastInputs inputs) => [.. inputs.All.Select(input => input.Estimate.Value)];

    /// <summary>The same intervals by seeded sampling: the check on the first-order ones, by result name.</summary>
    public static IReadOnlyDictionary<string, (Estimate FirstOrder, Estimate Sampled)> CompareIntervals(
        PickupModel model,
        LoadCircuit? load,
        int samples,
        int seed,
        CancellationToken cancel = default
    )
    {
        ForecastScene scene = new(model, new ForecastOptions { JigM = null }, cancel);
        ForecastInputs inputs = new(model, scene);
        ForecastVector vector = new(scene, inputs, load);
        PropagatedResult[] first = Propagation.FirstOrder(inputs.All, vector.Evaluate, vector.Scatters());
        Estimate[] sampled = Propagation.Sample(inputs.All, vector.Evaluate, vector.Count, samples, seed);
        Dictionary<string, (Estimate, Estimate)> pairs = [];
        for (int c = 0; c < model.Coils.Count; c++)
        {
            foreach (CoilResult result in Enum.GetValues<CoilResult>())
            {
                int place = vector.PlaceOf(c, result);
                pairs[string.Create(CultureInfo.InvariantCulture, $"coils[{c}].{Formula.Coil[result].Name}")] = (
                    first[place].Estimate,
                    sampled[place]
                );
            }
        }

        foreach (PickupResult result in Enum.GetValues<PickupResult>())
        {
            pairs[$"pickup.{result}"] = (first[vector.PlaceOf(result)].Estimate, sampled[vector.PlaceOf(result)]);
        }

        return pairs;
    }

    private sealed class Assembly(
        PickupModel model,
        ForecastScene scene,
        ForecastInputs inputs,
        ForecastVector vector,
        PropagatedResult[] results
    )
    {
        public CoilForecast Coil(int c)
        {
            Figure Of(CoilResult result) => Learnt(c, result, Make(Formula.Coil[result], vector.PlaceOf(c, result), Measured(c, result)));
            return new CoilForecast
            {
                Name = model.Coils[c].Name,
                TurnsPerLayer = Of(CoilResult.TurnsPerLayer),
                Layers = Of(CoilResult.Layers),
                Fill = scene.Wound[c].Fill is null ? null : Of(CoilResult.Fill),
                Build = Of(CoilResult.Build),
                OuterLength = Of(CoilResult.OuterLength),
                OuterWidth = Of(CoilResult.OuterWidth),
                MeanTurnLength = Of(CoilResult.MeanTurnLength),
                WireLength = Of(CoilResult.WireLength),
                WireMass = Of(CoilResult.WireMass),
                DcResistance = Of(CoilResult.DcResistance),
                AirInductance = Of(CoilResult.AirInductance),
                Inductance = Of(CoilResult.Inductance),
                Capacitance = Of(CoilResult.Capacitance),
                HumAreaM2 = scene.Field.EffectiveAreaM2[c],
            };
        }

        public PickupForecast Pickup(bool loaded, IReadOnlyList<double> frequenciesHz)
        {
            Figure Of(PickupResult result) => Make(Formula.Pickup[result], vector.PlaceOf(result), measured: false);
            ResonanceForecast? Resonance(PickupResult first) =>
                results[vector.PlaceOf(first)].Estimate.Value > 0 ? new ResonanceForecast(Of(first), Of(first + 1), Of(first + 2)) : null;
            return new PickupForecast
            {
                DcResistance = Learnt(null, isResistance: true, Of(PickupResult.DcResistance)),
                Inductance = Learnt(null, isResistance: false, Of(PickupResult.Inductance)),
                Capacitance = Of(PickupResult.Capacitance),
                CapacitanceShares = new CapacitanceShares(
                    Make(
                        Formula.Pickup[PickupResult.WindingCapacitance],
                        vector.PlaceOf(PickupResult.WindingCapacitance),
                        model.Coils.All(coil => coil.Winding.MeasuredCapacitanceF is not null)
                    ),
                    Assumed(Of(PickupResult.LeadCapacitance), scene.Leads?.Basis == Basis.Assumed),
                    Of(PickupResult.MetalCapacitance),
                    Of(PickupResult.BetweenCapacitance)
                ),
                UnloadedResonance = Resonance(PickupResult.UnloadedFrequency),
                LoadedResonance = loaded ? Resonance(PickupResult.LoadedFrequency) : null,
                Coupling = model.Coils.Count > 1 ? Of(PickupResult.Coupling) : null,
                Others = [.. ForecastVector.Others.Select(Of).Where(figure => figure.Value > 0)],
                Spectrum = [.. frequenciesHz.Select(Line)],
                HumEffectiveArea = Of(PickupResult.EffectiveArea),
                HumGradient = [Of(PickupResult.GradientX), Of(PickupResult.GradientY), Of(PickupResult.GradientZ)],
                HumResidual = Residual(Of(PickupResult.HumBalance)),
                Strings = [.. Enumerable.Range(0, scene.Strings?.Answers.Count ?? 0).Select(String)],
                Poles = [.. (scene.Poles?.Answers ?? []).Select(Pole)],
            };
        }

        private static Figure Assumed(Figure figure, bool assumed) =>
            assumed ? figure with { Estimate = figure.Estimate with { Basis = Basis.Assumed } } : figure;

        private PoleForecast Pole(PoleAnswer answer, int index) =>
            new(
                answer.Number,
                model.Coils[answer.Coil].Name,
                scene.Poles!.JigM,
                answer.AtM,
                Make(Formula.PoleField(scene.Poles.JigM), vector.PlaceOfPole(index), measured: false)
            );

        private StringForecast String(int index)
        {
            Figure Of(StringResult result) => Make(Formula.String[result], vector.PlaceOf(index, result), measured: false);
            return new StringForecast(index + 1, Of(StringResult.Linkage), Of(StringResult.Sensitivity), Of(StringResult.Field));
        }

        /// <summary>The balance in decibels: its interval reaches from the nearest to the farthest from perfect balance.</summary>
        private static Figure Residual(Figure balance)
        {
            Estimate ratio = balance.Estimate;
            double Db(double part) => 20 * Math.Log10(Math.Max(1e-6, Math.Abs(part)));
            double nearest = ratio.Low < 0 && ratio.High > 0 ? 0 : Math.Min(Math.Abs(ratio.Low), Math.Abs(ratio.High));
            double low = Math.Min(Db(nearest), Db(ratio.Value)),
                high = Math.Max(Db(Math.Max(Math.Abs(ratio.Low), Math.Abs(ratio.High))), Db(ratio.Value));
            Estimate db = new(Db(ratio.Value), low, Math.Min(0, high), Basis.Forecast);
            return new Figure(
                Formula.HumResidual.Name,
                Formula.HumResidual.Unit,
                db,
                balance.Derivation with
                {
                    Symbols = Formula.HumResidual.Symbols,
                    Numbers = string.Create(CultureInfo.InvariantCulture, $"= {db.Value:G4} dB, balance {balance.Derivation.Numbers}"),
                    Source = Formula.HumResidual.Source,
                }
            );
        }

        private SpectrumForecast Line(double frequencyHz)
        {
            int k = scene.FrequenciesHz.ToList().FindIndex(f => Math.Abs(f - frequencyHz) < 1e-9 * frequencyHz);
            return new SpectrumForecast(
                frequencyHz,
                Make(Formula.Spectrum(inductance: true), vector.PlaceOfSpectrum(k, inductance: true), measured: false),
                Make(Formula.Spectrum(inductance: false), vector.PlaceOfSpectrum(k, inductance: false), measured: false)
            );
        }

        private bool Measured(int c, CoilResult result) =>
            (result == CoilResult.Build && model.Coils[c].Winding.MeasuredBuildM is not null)
            || (result == CoilResult.Capacitance && model.Coils[c].Winding.MeasuredCapacitanceF is not null);

        private Figure Learnt(int coil, CoilResult result, Figure figure) =>
            result is CoilResult.DcResistance or CoilResult.Inductance ? Learnt(coil, result == CoilResult.DcResistance, figure) : figure;

        /// <summary>A figure with the basis and the source of what was learnt.</summary>
        private Figure Learnt(int? coil, bool isResistance, Figure figure) =>
            ForecastVector.IsLearnt(model, coil, isResistance)
                ? figure with
                {
                    Estimate = figure.Estimate with { Basis = Basis.Learnt },
                    Derivation = figure.Derivation with
                    {
                        Symbols = "(" + figure.Derivation.Symbols + ") × what the shop's coils read over it",
                        Source = string.Join(
                            "; ",
                            model
                                .Coils.Where((_, c) => c == (coil ?? c))
                                .Select(one => (isResistance ? one.LearntResistance : one.Learnt!.Inductance)!.Source)
                                .Distinct(StringComparer.Ordinal)
                        ),
                    },
                }
                : figure;

        private Figure Make(Formula formula, int place, bool measured)
        {
            PropagatedResult result = results[place];
            List<DerivationInput> used = [];
            for (int i = 0; i < inputs.All.Count; i++)
            {
                if (result.Shares[i] > 1e-6)
                {
                    UncertainInput input = inputs.All[i];
                    used.Add(new DerivationInput(input.Name, input.Unit, input.Estimate, input.Source, result.Shares[i]));
                }
            }

            used.Sort((a, b) => b.VarianceShare.CompareTo(a.VarianceShare));
            string numbers =
                string.Create(CultureInfo.InvariantCulture, $"= {result.Estimate.Value:G5} {formula.Unit}")
                + string.Concat(
                    used.Take(4)
                        .Select(input =>
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"; {input.Name} {input.Estimate.Value:G5} {input.Unit}, {input.Estimate.Low:G5} to "
                                    + $"{input.Estimate.High:G5}, {input.VarianceShare:P0} of the variance"
                            )
                        )
                );
            Estimate estimate = result.Estimate with { Basis = measured ? Basis.Measured : Basis.Forecast };
            return new Figure(
                formula.Name,
                formula.Unit,
                estimate,
                new Derivation(formula.Symbols, numbers, used, formula.Source, used.Count > 0 ? used[0].Name : null)
            );
        }
    }
}

using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Analysis.Comparisons;

/// <summary>A pickup solved once, with its uncertain inputs, ready to be set against others.</summary>
public sealed class SolvedPickup
{
    private readonly ForecastScene _scene;
    private readonly ForecastInputs _inputs;
    private readonly LoadCircuit? _load;
    private readonly bool _inCircuit;

    /// <param name="model">The pickup.</param>
    /// <param name="load">What hangs on it; null leaves the loaded peak out.</param>
    /// <param name="options">Engine; the fast one unless said.</param>
    /// <param name="cancel">Stops the field solution.</param>
    public SolvedPickup(PickupModel model, LoadCircuit? load, ForecastOptions? options = null, CancellationToken cancel = default)
    {
        _load = load;
        _scene = new ForecastScene(model, options ?? new ForecastOptions(), cancel);
        _inputs = new ForecastInputs(model, _scene);
        Warnings = ForecastWarnings.Find(model, _scene);
    }

    private SolvedPickup(SolvedPickup solved, LoadCircuit? load, bool inCircuit)
    {
        (_scene, _inputs, Warnings) = (solved._scene, solved._inputs, solved.Warnings);
        (_load, _inCircuit) = (load, inCircuit);
    }

    /// <summary>What a winder should know, as a forecast says it.</summary>
    public IReadOnlyList<ForecastWarning> Warnings { get; }

    internal IReadOnlyList<UncertainInput> Inputs => _inputs.All;

    /// <summary>The same pickup on another load: the field is not solved again.</summary>
    /// <param name="load">What hangs on it; null leaves the loaded peak out.</param>
    /// <param name="inCircuit">True reads Q, the −3 dB point, the level at 20 Hz and the thermal noise too.</param>
    public SolvedPickup On(LoadCircuit? load, bool inCircuit = false) => new(this, load, inCircuit);

    /// <summary>A reader of the results, for one thread.</summary>
    internal Reading Read()
    {
        ForecastVector vector = new(_scene, _inputs, _load);
        IReadOnlyList<NamedQuantity> named = NamedQuantity.CreateAll(_scene, vector, _load is not null);
        return new Reading(vector, Inputs, _inCircuit && _load is { } load ? [.. named, .. CircuitQuantities.Create(vector, load)] : named);
    }

    /// <summary>Reads the named results at any state of the inputs; NaN where one does not exist.</summary>
    internal sealed class Reading
    {
        private readonly ForecastVector _vector;
        private readonly IReadOnlyList<UncertainInput> _inputs;
        private readonly Func<double[], double>[] _read;
        private readonly double[] _at;
        private readonly double[] _results;

        public Reading(ForecastVector vector, IReadOnlyList<UncertainInput> inputs, IReadOnlyList<NamedQuantity> quantities)
        {
            (_vector, _inputs, Quantities) = (vector, inputs, quantities);
            _at = [.. inputs.Select(input => input.Estimate.Value)];
            _results = new double[vector.Count];
            Values = new double[quantities.Count];
            vector.Evaluate(_at, _results);
            _read = [.. quantities.Select(quantity => quantity.Around(_results))];
        }

        public IReadOnlyList<NamedQuantity> Quantities { get; }

        /// <summary>What was read last.</summary>
        public double[] Values { get; }

        /// <summary>Reads with each input at so many standard deviations from its middle.</summary>
        public void ReadAt(Func<int, double> deviationsOf)
        {
            for (int i = 0; i < _at.Length; i++)
            {
                _at[i] = _inputs[i].ValueAt(deviationsOf(i));
            }

            _vector.Evaluate(_at, _results);
            for (int q = 0; q < Values.Length; q++)
            {
                Values[q] = _read[q](_results);
            }
        }
    }
}

using Coilwright.Physics.Fields;

namespace Coilwright.Analysis.Forecasts;

/// <summary>How to forecast.</summary>
public sealed record ForecastOptions
{
    /// <summary>Frequencies of the spectrum, Hz, each 10…20,000.</summary>
    public IReadOnlyList<double> FrequenciesHz { get; init; } = [120, 1_000, 10_000];

    /// <summary>Points of the response curves, 20 Hz to 20 kHz on a logarithmic axis; 0 leaves them out.</summary>
    public int CurvePoints { get; init; }

    /// <summary>False leaves the strings out: output and field at the strings.</summary>
    public bool Strings { get; init; } = true;

    /// <summary>True adds the curves of the pictures.</summary>
    public bool Pictures { get; init; }

    /// <summary>The field engine; the fast one unless said.</summary>
    public IFieldEngine Engine { get; init; } = new FastFieldEngine();
}

using Coilwright.Physics.BoundaryElements;

namespace Coilwright.Analysis.Forecasts;

/// <summary>How to forecast.</summary>
public sealed record ForecastOptions
{
    /// <summary>Frequencies of the spectrum, Hz, each 10…20,000.</summary>
    public IReadOnlyList<double> FrequenciesHz { get; init; } = [120, 1_000, 10_000];

    /// <summary>Points of the response curves, 20 Hz to 20 kHz on a logarithmic axis; 0 leaves them out.</summary>
    public int CurvePoints { get; init; }

    /// <summary>Points of the band that the response scatters in, over the same frequencies; 0 leaves it out.</summary>
    public int BandPoints { get; init; }

    /// <summary>False leaves out what the magnets do outside: output, field at the strings and over the poles.</summary>
    public bool Strings { get; init; } = true;

    /// <summary>
    /// Distance over each pole's top at which its field is read, m, 0.1 mm to 50 mm; null leaves that out. 1 mm unless said, our
    /// assumption.
    /// </summary>
    public double? JigM { get; init; } = 1e-3;

    /// <summary>True adds the curves of the pictures.</summary>
    public bool Pictures { get; init; }

    /// <summary>The field engine; the fast one unless said.</summary>
    public IFieldEngine Engine { get; init; } = new FastFieldEngine();
}

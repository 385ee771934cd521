namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>What one length of a pickup does to its field, per metre of change; coils at one turn each, all wound one way.</summary>
internal sealed record SizeRate
{
    /// <summary>Frequencies of the spectrum, Hz, rising.</summary>
    public required IReadOnlyList<double> FrequenciesHz { get; init; }

    /// <summary>Own inductance of each winding without cores, H/m.</summary>
    public required double[] AirH { get; init; }

    /// <summary>Inductances with cores at rest, H/m.</summary>
    public required double[,] StaticH { get; init; }

    /// <summary>Inductances at each frequency, H/m.</summary>
    public required IReadOnlyList<double[,]> SpectrumH { get; init; }

    /// <summary>Logarithm of each coil's loss at each frequency, 1/m.</summary>
    public required IReadOnlyList<double[]> LossPerM { get; init; }

    /// <summary>Area of each coil with its cores, m²/m.</summary>
    public required double[] AreaM2 { get; init; }

    /// <summary>What a field changing along each axis links with each coil, m³/m; null when not solved.</summary>
    public double[,]? GradientM3 { get; init; }

    /// <summary>Capacitance to metal, from winding to winding, and of windings with themselves, F/m.</summary>
    public required StrayRate StrayF { get; init; }

    /// <summary>Logarithms of the middle string's linkage, sensitivity and field, 1/m.</summary>
    public (double Linkage, double Sensitivity, double Field) StringPerM { get; init; }

    /// <summary>Logarithm of the field over the strongest pole, 1/m.</summary>
    public double PoleFieldPerM { get; init; }
}

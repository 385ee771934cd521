namespace Coilwright.Formats.Curves;

/// <summary>What a column of a measured curve holds, in the unit that the program works in.</summary>
internal enum CurveColumn
{
    /// <summary>Hz.</summary>
    Frequency,

    /// <summary>dB.</summary>
    Gain,

    /// <summary>Degrees.</summary>
    Phase,

    /// <summary>Magnitude of the impedance, Ω.</summary>
    Impedance,

    /// <summary>Its real part, Ω.</summary>
    Real,

    /// <summary>Its imaginary part, Ω.</summary>
    Imaginary,
}

namespace Coilwright.Physics.Circuit;

/// <summary>A curve that can be searched for its peak and its falls.</summary>
internal interface IGainCurve
{
    /// <summary>Reciprocal of the squared gain at one frequency, up to a constant factor; above 0, finite.</summary>
    double Attenuation(double frequencyHz);
}

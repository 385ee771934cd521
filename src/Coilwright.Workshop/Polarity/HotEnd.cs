namespace Coilwright.Workshop.Polarity;

/// <summary>Which end of the wire goes towards the output; the other goes to ground, or to the next coil.</summary>
public enum HotEnd
{
    Finish,
    Start,
}

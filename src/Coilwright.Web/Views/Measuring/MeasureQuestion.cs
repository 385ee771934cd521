namespace Coilwright.Web.Views.Measuring;

/// <summary>One thing that can be measured on a page of its own.</summary>
/// <param name="Address">Its page.</param>
/// <param name="Name">What it is called in the line of tabs.</param>
/// <param name="Question">What a person wants to know.</param>
/// <param name="Needs">What they need for it.</param>
public sealed record MeasureQuestion(string Address, string Name, string Question, string Needs)
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<MeasureQuestion> All { get; } =
    [
        new(
            "/measure/resonance",
            "Resonance",
            "What are its inductance and own capacitance?",
            "A generator, a voltmeter or an oscilloscope, and one capacitor that you have measured."
        ),
        new(
            "/measure/curve",
            "Curve",
            "What parts does this measured curve show?",
            "A table from an impedance meter, or two gain curves with different known loads."
        ),
        new(
            "/measure/sweep",
            "Recording",
            "What is its impedance, with a sound card?",
            "A sound card with two inputs, a resistor, and the signal made here."
        ),
        new(
            "/measure/gauge",
            "Gauge study",
            "Can this meter judge our coils?",
            "A few coils, two persons, and each coil read twice by each."
        ),
        new(
            "/measure/sample",
            "Sampling",
            "How many pieces of a lot must be looked at?",
            "The size of the lot, and what the customer agreed on."
        ),
    ];
}

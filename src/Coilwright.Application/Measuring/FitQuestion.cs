namespace Coilwright.Application.Measuring;

/// <summary>A curve as it was handed in, and what hung on the pickup while it was read, as typed.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Text">The table; empty for none.</param>
/// <param name="Capacitance">Capacitance across the pickup; empty for none.</param>
/// <param name="Resistance">Resistance across it; empty for none.</param>
public sealed record SentCurve(string Name, string Text, string Capacitance = "", string Resistance = "")
{
    /// <summary>True when nothing of it was handed in.</summary>
    public bool IsEmpty => Text.Trim().Length == 0 && Capacitance.Trim().Length == 0 && Resistance.Trim().Length == 0;
}

/// <summary>Curves of one pickup whose parts are asked for.</summary>
/// <param name="Curves">One curve, or several behind one exciter, each with its own load.</param>
/// <param name="Resistance">The winding's DC resistance by meter, for one curve of gain; empty when it is to be found.</param>
public sealed record FitQuestion(IReadOnlyList<SentCurve> Curves, string Resistance = "");

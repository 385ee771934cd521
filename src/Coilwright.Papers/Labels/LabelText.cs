namespace Coilwright.Papers.Labels;

/// <summary>A line on a label. Lengths in points, from the label's upper left corner.</summary>
/// <param name="Text">What it says, as it is printed.</param>
/// <param name="X">Where it begins.</param>
/// <param name="Baseline">Where its letters stand.</param>
/// <param name="Size">Size of the letters.</param>
/// <param name="Bold">True for the title.</param>
/// <param name="Width">How wide it is.</param>
public sealed record LabelText(string Text, double X, double Baseline, double Size, bool Bold, double Width);

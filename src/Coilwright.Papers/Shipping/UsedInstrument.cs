namespace Coilwright.Papers.Shipping;

/// <summary>An instrument that readings of a certificate were made with.</summary>
/// <param name="Name">As the readings name it.</param>
/// <param name="Uncertainty">In words, for example "±0.1 % of the reading (95 %), maker's sheet"; empty when nobody stated it.</param>
/// <param name="LastChecked">Day of its last check or calibration; null when not known.</param>
public sealed record UsedInstrument(string Name, string Uncertainty = "", DateOnly? LastChecked = null);

namespace Coilwright.Physics.Winding;

/// <summary>One point of the surface behind <see cref="LayForecast"/>.</summary>
/// <param name="Packing">Packing factor.</param>
/// <param name="Touching">Capacitance of touching pairs over (4/3)·C_L/p, with C_L of touching turns.</param>
/// <param name="Near">Capacitance of pairs near each other over the same, with C_L of turns <see cref="LaySurfaceRecipe.NearGap"/>
/// apart.</param>
public readonly record struct LayNode(double Packing, double Touching, double Near);

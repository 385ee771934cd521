namespace Coilwright.Analysis.Lots;

/// <summary>When to order and how much.</summary>
/// <param name="At">Stock at which an order goes out, units.</param>
/// <param name="Lot">Units ordered.</param>
public readonly record struct ReorderPoint(double At, double Lot);

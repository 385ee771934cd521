using Coilwright.Physics.Circuit;

namespace Coilwright.Papers.Sheets;

/// <summary>A part of a sheet.</summary>
public abstract record SheetPart;

/// <summary>A title inside the sheet.</summary>
public sealed record TitlePart(string Text) : SheetPart;

/// <summary>A paragraph.</summary>
public sealed record TextPart(string Text) : SheetPart;

/// <summary>The one figure that is read from a metre away.</summary>
public sealed record LargePart(string Label, string Value, string Note) : SheetPart;

/// <summary>A table; the first row names the columns.</summary>
/// <param name="Headings">Names of the columns.</param>
/// <param name="Rows">Cells, as many in each row as headings.</param>
/// <param name="Widths">Shares of the width, as many as headings; equal when empty.</param>
public sealed record TablePart(IReadOnlyList<string> Headings, IReadOnlyList<IReadOnlyList<string>> Rows, IReadOnlyList<double> Widths) : SheetPart;

/// <summary>A step with what to do, how long to hold after it, and its cautions, boxed where they belong.</summary>
public sealed record StepPart(int Number, string Name, IReadOnlyList<string> Lines, IReadOnlyList<string> Cautions) : SheetPart;

/// <summary>A response on its load.</summary>
/// <param name="Caption">What it shows, the load included.</param>
/// <param name="Curve">Its points.</param>
/// <param name="Peak">Its highest point, or null.</param>
public sealed record CurvePart(string Caption, Response Curve, ResonancePeak? Peak) : SheetPart;

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

/// <summary>A figure in a grid of them.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Value">The figure with its unit.</param>
/// <param name="Note">Limits, basis, condition; empty for none.</param>
public sealed record KeyFigure(string Label, string Value, string Note = "");

/// <summary>
/// Figures in columns, each to be read from a metre away: letters of 5 mm and more, one two-hundredth of the distance (common practice, no
/// source), shrunk only where a value would not fit its column.
/// </summary>
/// <param name="Figures">In the order of reading, row by row.</param>
/// <param name="Columns">1 to 4 columns.</param>
public sealed record FiguresPart(IReadOnlyList<KeyFigure> Figures, int Columns) : SheetPart;

/// <summary>A caution, boxed, where no step holds it.</summary>
public sealed record CautionPart(string Text) : SheetPart;

/// <summary>A table; the first row names the columns.</summary>
/// <param name="Headings">Names of the columns.</param>
/// <param name="Rows">Cells, as many in each row as headings.</param>
/// <param name="Widths">Shares of the width, as many as headings; equal when empty.</param>
public sealed record TablePart(IReadOnlyList<string> Headings, IReadOnlyList<IReadOnlyList<string>> Rows, IReadOnlyList<double> Widths)
    : SheetPart;

/// <summary>A step with what to do, how long to hold after it, and its cautions, boxed where they belong.</summary>
public sealed record StepPart(int Number, string Name, IReadOnlyList<string> Lines, IReadOnlyList<string> Cautions) : SheetPart;

/// <summary>A response on its load.</summary>
/// <param name="Caption">What it shows, the load included.</param>
/// <param name="Curve">Its points.</param>
/// <param name="Peak">Its highest point, or null.</param>
public sealed record CurvePart(string Caption, Response Curve, ResonancePeak? Peak) : SheetPart;

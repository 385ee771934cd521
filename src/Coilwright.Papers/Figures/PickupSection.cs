using System.Text;
using Coilwright.Physics;
using Coilwright.Physics.Winding;

namespace Coilwright.Papers.Figures;

/// <summary>
/// A pickup cut open, to scale, in millimetres: one coil along its length, or several across. Along the page runs x or y, down it −z.
/// </summary>
/// <param name="model">The pickup.</param>
/// <param name="builds">Radial thickness of each winding, m.</param>
internal sealed class PickupSection(PickupModel model, IReadOnlyList<double> builds)
{
    /// <summary>Drawn where the recipe states no flange, m.</summary>
    private const double UsualFlangeM = 1.5e-3;
    private const double StringM = 0.5e-3;
    private const string Thin = """stroke="currentColor" stroke-width="0.25" """;
    private readonly StringBuilder _svg = new();

    /// <summary>True when the cut runs along the strings' row, through one coil from end to end.</summary>
    public bool IsAlong => model.Coils.Count == 1;

    /// <summary>Height of the highest pole top, or of the highest winding without poles, m.</summary>
    public double HighestM =>
        model
            .Coils.SelectMany(coil => coil.Poles.SelectMany(pole => pole.TopsM).Select(top => coil.Position.ZM + top))
            .DefaultIfEmpty(model.Coils.Max(coil => coil.Position.ZM + coil.Bobbin.WindingHeightM / 2))
            .Max();

    /// <summary>From the middle of the page to the end of the widest winding or flange, m.</summary>
    public double ReachM =>
        model
            .Coils.Select((coil, index) => Math.Abs(MiddleM(coil)) + HalfCoreM(coil) + Math.Max(coil.Bobbin.MaxBuildM ?? 0, builds[index]))
            .Max();

    /// <summary>Underside of the strings, m; as high as the highest pole without strings.</summary>
    public double StringsM => HighestM + (model.Strings?.ClearanceM ?? 0);

    /// <summary>Height of the lowest part, m.</summary>
    public double LowestM =>
        new[]
        {
            model.Coils.Min(coil => coil.Position.ZM - coil.Bobbin.WindingHeightM / 2 - FlangeM(coil.Bobbin)),
            model.Coils.SelectMany(coil => coil.Poles.Select(pole => BottomM(coil, pole, 0))).DefaultIfEmpty(0).Min(),
            model.Bars.Select(bar => bar.CentreM.ZM - bar.SizeM.ZM / 2).DefaultIfEmpty(0).Min(),
            model.Sheets.Select(sheet => sheet.BottomM).DefaultIfEmpty(0).Min(),
        }.Min();

    /// <summary>Everything that the cut shows.</summary>
    /// <param name="id">Prefix of the drawing's patterns.</param>
    public string Draw(string id)
    {
        DrawMetal();
        for (int index = 0; index < model.Coils.Count; index++)
        {
            DrawCoil(model.Coils[index], builds[index], id);
        }

        DrawStrings();
        return _svg.ToString();
    }

    /// <summary>Thickness of a flange as it is drawn, m.</summary>
    public static double FlangeM(Bobbin bobbin) => bobbin.FlangeM ?? UsualFlangeM;

    /// <summary>From a coil's middle to the end of its former in this cut, m.</summary>
    public double HalfCoreM(CoilModel coil) => (IsAlong ? coil.Bobbin.CoreLengthM : coil.Bobbin.CoreWidthM) / 2;

    /// <summary>Where a coil's middle lies across the page, m.</summary>
    public double MiddleM(CoilModel coil) => IsAlong ? coil.Position.XM : coil.Position.YM;

    private static double BottomM(CoilModel coil, PoleModel pole, int index) => coil.Position.ZM + pole.TopsM[index] - pole.LengthM;

    private void DrawCoil(CoilModel coil, double buildM, string id)
    {
        double middle = MiddleM(coil),
            half = HalfCoreM(coil),
            low = coil.Position.ZM - coil.Bobbin.WindingHeightM / 2,
            high = coil.Position.ZM + coil.Bobbin.WindingHeightM / 2,
            flange = FlangeM(coil.Bobbin),
            reach = half + Math.Max(coil.Bobbin.MaxBuildM ?? 0, buildM);
        Box(middle - half, middle + half, low, high, """fill="var(--paper, #f4ede4)" """ + Thin);
        string wire = $"""fill="url(#{id}-wire)" stroke="var(--copper, #a8541f)" stroke-width="0.3" """;
        Box(middle - half - buildM, middle - half, low, high, wire);
        Box(middle + half, middle + half + buildM, low, high, wire);
        Box(middle - reach, middle + reach, high, high + flange, """fill="var(--line, #bbb)" """ + Thin);
        Box(middle - reach, middle + reach, low - flange, low, """fill="var(--line, #bbb)" """ + Thin);
        foreach (PoleModel pole in coil.Poles)
        {
            DrawPoles(coil, pole);
        }
    }

    private void DrawPoles(CoilModel coil, PoleModel pole)
    {
        int shown = IsAlong ? pole.PositionsM.Count : 1;
        double half = (IsAlong && pole.Shape == PoleShape.Blade ? pole.WidthM : pole.DiameterM) / 2;
        for (int index = 0; index < shown; index++)
        {
            double at = MiddleM(coil) + (IsAlong ? pole.PositionsM[index] : 0),
                top = coil.Position.ZM + pole.TopsM[index];
            Box(at - half, at + half, BottomM(coil, pole, index), top, """fill="var(--sheet, #fff)" """ + Thin);
            if (pole.HeadDiameterM > 0)
            {
                double head = pole.HeadDiameterM / 2;
                Box(at - head, at + head, top - pole.HeadHeightM, top, """fill="var(--sheet, #fff)" """ + Thin);
            }
        }
    }

    private void DrawMetal()
    {
        foreach (BarModel bar in model.Bars)
        {
            double middle = IsAlong ? bar.CentreM.XM : bar.CentreM.YM,
                half = (IsAlong ? bar.SizeM.XM : bar.SizeM.YM) / 2;
            Box(
                middle - half,
                middle + half,
                bar.CentreM.ZM - bar.SizeM.ZM / 2,
                bar.CentreM.ZM + bar.SizeM.ZM / 2,
                """fill="none" stroke-dasharray="1.2 0.8" """ + Thin
            );
        }

        foreach (SheetModel sheet in model.Sheets)
        {
            double half = (IsAlong ? sheet.LengthM : sheet.WidthM) / 2;
            double bottom = sheet.Shape == SheetShape.Cover ? sheet.TopM - sheet.ThicknessM : sheet.BottomM;
            string look = """fill="currentColor" fill-opacity="0.25" """ + Thin;
            Box(-half, half, bottom, sheet.TopM, look);
            if (sheet.Shape == SheetShape.Cover)
            {
                Box(-half, -half + sheet.ThicknessM, sheet.BottomM, bottom, look);
                Box(half - sheet.ThicknessM, half, sheet.BottomM, bottom, look);
            }
        }
    }

    /// <summary>Dots where the cut crosses the strings, a line where it runs along one.</summary>
    private void DrawStrings()
    {
        if (model.Strings is not { } strings)
        {
            return;
        }

        double z = -(StringsM + StringM / 2) * 1e3;
        if (!IsAlong)
        {
            double reach = ReachM * 1e3;
            Write($"""<path class="string" d="M{-reach:0.##} {z:0.##}H{reach:0.##}" stroke="currentColor" stroke-width="0.5"/>""");
            return;
        }

        for (int index = 0; index < strings.Count; index++)
        {
            Write($"""<circle class="string" cx="{strings.XM(index) * 1e3:0.##}" cy="{z:0.##}" r="0.5" fill="currentColor"/>""");
        }
    }

    private void Box(double leftM, double rightM, double lowM, double highM, string look) =>
        Write(
            $"""<rect x="{leftM * 1e3:0.###}" y="{-highM * 1e3:0.###}" width="{(rightM - leftM) * 1e3:0.###}" """
                + $"""height="{(highM - lowM) * 1e3:0.###}" {look}/>"""
        );

    private void Write(InvariantText text) => _svg.Append(text.ToText());
}

using Coilwright.Physics;
using Coilwright.Physics.Sizes;

namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>The lengths of a pickup as one draw has them: its bobbins, the lay in them, its sheets, and its field.</summary>
internal sealed class SizeShift
{
    private readonly PickupModel _model;
    private readonly ForecastInputs _inputs;
    private readonly CoilModel[] _coils;

    public SizeShift(ForecastScene scene, ForecastInputs inputs)
    {
        (_model, _inputs, Field) = (scene.Model, inputs, new FieldShift(scene));
        _coils = [.. _model.Coils];
        (PackingBy, CapacitanceTimes) = (new double[_coils.Length], new double[_coils.Length]);
        ThicknessBy = new double[_model.Sheets.Count];
    }

    /// <summary>What they add to the field.</summary>
    public FieldShift Field { get; }

    /// <summary>What each coil's packing gains by its window's height.</summary>
    public double[] PackingBy { get; }

    /// <summary>By what each coil's own capacitance per length of its turns is multiplied for the same reason.</summary>
    public double[] CapacitanceTimes { get; }

    /// <summary>Relative change of each sheet's thickness.</summary>
    public double[] ThicknessBy { get; }

    /// <summary>A coil with its bobbin as it came out.</summary>
    public CoilModel CoilOf(int coil) => _coils[coil];

    /// <summary>Takes the lengths from the input values.</summary>
    public void Take(double[] x)
    {
        Field.Clear();
        Array.Fill(PackingBy, 0);
        Array.Fill(CapacitanceTimes, 1);
        Array.Fill(ThicknessBy, 0);
        for (int c = 0; c < _coils.Length; c++)
        {
            _coils[c] = _model.Coils[c];
        }

        foreach (SizePlaces places in _inputs.Sizes)
        {
            double byM = _inputs.DepartureM(places, x);
            if (Math.Abs(byM) > 0)
            {
                Take(places.Size, _model.Sizes[places.Size], byM);
            }
        }
    }

    private void Take(int place, PartSize size, double byM)
    {
        Field.Add(place, byM);
        if (size.Kind == SizeKind.SheetThickness)
        {
            ThicknessBy[size.Part] += byM / size.Estimate.Value;
        }

        if (size.IsOfBobbin)
        {
            CoilModel coil = _coils[size.Part];
            _coils[size.Part] = coil with { Bobbin = SizeMoves.Move(coil.Bobbin, size.Kind, byM) };
        }

        if (size.Kind == SizeKind.WindingHeight)
        {
            (PackingBy[size.Part], CapacitanceTimes[size.Part]) = ForecastScene.LayChange(
                _model,
                _model.Coils[size.Part],
                _coils[size.Part]
            );
        }
    }
}

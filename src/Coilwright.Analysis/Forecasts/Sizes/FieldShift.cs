using Coilwright.Physics.Winding;

namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>What lengths off their middle add to a field: sums of what each does by itself, turns and winding signs included.</summary>
internal sealed class FieldShift
{
    private readonly ForecastScene _scene;
    private readonly double[] _turns;
    private readonly Dictionary<int, SpectrumRate> _spectra = [];
    private bool _isClear = true;

    public FieldShift(ForecastScene scene)
    {
        _scene = scene;
        _turns =
        [
            .. scene.Model.Coils.Select(coil =>
                coil.Winding.Turns * (coil.Winding.Direction == WindingDirection.CounterClockwise ? 1 : -1)
            ),
        ];
        int coils = _turns.Length;
        (AirH, AreaM2) = (new double[coils], new double[coils]);
        (StaticH, GradientM3) = (new double[coils, coils], new double[coils, 3]);
        SpectrumH = [.. scene.FrequenciesHz.Select(_ => new double[coils, coils])];
        LossBy = [.. scene.FrequenciesHz.Select(_ => new double[coils])];
    }

    /// <summary>Own inductance of each winding without cores, H.</summary>
    public double[] AirH { get; }

    /// <summary>Inductances with cores at rest, H.</summary>
    public double[,] StaticH { get; }

    /// <summary>Real parts of the inductances at each frequency of the scene, H.</summary>
    public double[][,] SpectrumH { get; }

    /// <summary>Logarithm of each coil's loss at each frequency.</summary>
    public double[][] LossBy { get; }

    /// <summary>Turns × area, m².</summary>
    public double[] AreaM2 { get; }

    /// <summary>What a field changing along each axis links, m³.</summary>
    public double[,] GradientM3 { get; }

    /// <summary>Capacitances outside the windings, F.</summary>
    public StrayRate StrayF { get; private set; }

    /// <summary>Logarithms of linkage, sensitivity and field of the strings.</summary>
    public (double Linkage, double Sensitivity, double Field) Strings { get; private set; }

    /// <summary>Logarithm of the field over the poles.</summary>
    public double PoleField { get; private set; }

    /// <summary>Begins anew with nothing moved.</summary>
    public void Clear()
    {
        if (_isClear)
        {
            return;
        }

        _isClear = true;
        (StrayF, Strings, PoleField) = (default, default, 0);
        Array.Clear(AirH);
        Array.Clear(AreaM2);
        Array.Clear(StaticH);
        Array.Clear(GradientM3);
        Array.ForEach(SpectrumH, Array.Clear);
        Array.ForEach(LossBy, Array.Clear);
    }

    /// <summary>Adds what one length does; nothing for one that no field feels.</summary>
    /// <param name="size">Its place in the model's list.</param>
    /// <param name="byM">How far it stands from its middle, m.</param>
    public void Add(int size, double byM)
    {
        if (_scene.Rates[size] is not { } rate)
        {
            return;
        }

        _isClear = false;
        AddCoils(rate, byM);
        AddSpectrum(SpectrumOf(size, rate), byM);
        StrayRate stray = rate.StrayF;
        StrayF = new StrayRate(StrayF.Metal + stray.Metal * byM, StrayF.Between + stray.Between * byM, StrayF.Own + stray.Own * byM);
        (double linkage, double sensitivity, double field) = rate.StringPerM;
        Strings = (Strings.Linkage + linkage * byM, Strings.Sensitivity + sensitivity * byM, Strings.Field + field * byM);
        PoleField += rate.PoleFieldPerM * byM;
    }

    private void AddCoils(SizeRate rate, double byM)
    {
        for (int i = 0; i < _turns.Length; i++)
        {
            double byTurns = byM * _turns[i];
            AirH[i] += rate.AirH[i] * byTurns * _turns[i];
            AreaM2[i] += rate.AreaM2[i] * byTurns;
            for (int j = 0; j < _turns.Length; j++)
            {
                StaticH[i, j] += rate.StaticH[i, j] * byTurns * _turns[j];
            }

            for (int axis = 0; axis < 3 && rate.GradientM3 is not null; axis++)
            {
                GradientM3[i, axis] += rate.GradientM3[i, axis] * byTurns;
            }
        }
    }

    private void AddSpectrum(SpectrumRate rate, double byM)
    {
        for (int k = 0; k < SpectrumH.Length; k++)
        {
            for (int i = 0; i < _turns.Length; i++)
            {
                LossBy[k][i] += rate.LossPerM[k][i] * byM;
                for (int j = 0; j < _turns.Length; j++)
                {
                    SpectrumH[k][i, j] += rate.RealH[k][i, j] * byM * _turns[i] * _turns[j];
                }
            }
        }
    }

    private SpectrumRate SpectrumOf(int size, SizeRate rate)
    {
        if (!_spectra.TryGetValue(size, out SpectrumRate? known))
        {
            _spectra[size] = known = SpectrumRate.At(_scene.FrequenciesHz, rate);
        }

        return known;
    }
}

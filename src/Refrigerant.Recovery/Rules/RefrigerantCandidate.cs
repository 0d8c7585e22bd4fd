using System;
using Refrigerant.Recovery.Fluids;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>A refrigerant held against a pressure and a temperature. Immutable.</summary>
public sealed record RefrigerantCandidate
{
    private readonly double _bubble;
    private readonly double _dew;

    internal RefrigerantCandidate(Fluid fluid, double bubble, double dew, double deviation)
    {
        Fluid = fluid;
        _bubble = bubble;
        _dew = dew;
        Deviation = deviation;
    }

    /// <summary>The refrigerant.</summary>
    public Fluid Fluid { get; }

    /// <summary>Its bubble pressure at the temperature read, absolute: mostly liquid.</summary>
    public Pressure BubblePressure => new(_bubble, PressureUnit.Pascal);

    /// <summary>Its dew pressure there, absolute: the last of the liquid.</summary>
    public Pressure DewPressure => new(_dew, PressureUnit.Pascal);

    /// <summary>How far the pressure read lies outside its bubble and dew pressures, in uncertainties; 0 between them.</summary>
    public double Deviation { get; }

    /// <summary>Whether it fits: a deviation of 1 at most.</summary>
    public bool Fits => Deviation <= 1;

    /// <summary>Refrigerant and deviation, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Fluid.Designation}: {Deviation:F2}");
}

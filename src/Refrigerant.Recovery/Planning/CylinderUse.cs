using System;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>What a plan does with one cylinder. Immutable.</summary>
public sealed record CylinderUse
{
    internal CylinderUse(RecoveryCylinder cylinder, FillLimit limit, double received, Pressure? pressure, Temperature? temperature)
    {
        Cylinder = cylinder;
        Limit = limit;
        Received = new Mass(received, MassUnit.Kilogram);
        PressureAtEnd = pressure;
        TemperatureAtEnd = temperature;
    }

    /// <summary>The cylinder, with its content before the job.</summary>
    public RecoveryCylinder Cylinder { get; }

    /// <summary>How full it may be, and why.</summary>
    public FillLimit Limit { get; }

    /// <summary>Refrigerant that it receives; zero for a cylinder that is not used.</summary>
    public Mass Received { get; }

    /// <summary>Content after the job.</summary>
    public Mass Content => new(Cylinder.Content.Kilograms + Received.Kilograms, MassUnit.Kilogram);

    /// <summary>What the scale shows after the job.</summary>
    public Mass GrossWeight => new(Cylinder.TareWeight.Kilograms + Content.Kilograms, MassUnit.Kilogram);

    /// <summary>Content as a share of the limit.</summary>
    public Ratio ShareOfLimit => new(Content.Kilograms / Limit.MaximumFill.Kilograms, RatioUnit.DecimalFraction);

    /// <summary>Absolute pressure when it is closed; null for a cylinder that is not used.</summary>
    public Pressure? PressureAtEnd { get; }

    /// <summary>Temperature of the refrigerant when it is closed; null for a cylinder that is not used.</summary>
    public Temperature? TemperatureAtEnd { get; }

    /// <summary>Label and masses, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Cylinder.Label}: {Received.Kilograms:F2} kg in, {GrossWeight.Kilograms:F2} kg gross, {ShareOfLimit.Percent:F0} % of its limit");
}

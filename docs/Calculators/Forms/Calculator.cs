using System;
using Microsoft.AspNetCore.Components;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Gauges;
using UnitsNet;

namespace Refrigerant.Recovery.Calculators.Forms;

/// <summary>A part of a page that follows what the reader gives.</summary>
public abstract class Calculator : ComponentBase, IDisposable
{
    [Inject]
    protected Inputs Inputs { get; private set; } = null!;

    protected Show Show => new(Inputs.IsMetric);

    protected Barometer Air => Barometer.AtElevation(Length.FromMeters(Inputs.Number(Fields.Elevation)));

    protected Temperature RefrigerantTemperature => Temperature.FromKelvins(Inputs.Number(Fields.Temperature));

    protected RecoveryCylinder Cylinder(string label) =>
        RecoveryCylinder.FromMark(
            Inputs.Text(CylinderFields.MarkKey, CylinderFields.Marks[0]),
            Mass.FromKilograms(Inputs.Number(Fields.WaterCapacity)),
            Mass.FromKilograms(Inputs.Number(Fields.Tare))) with
        {
            Label = label,
        };

    public void Dispose()
    {
        Inputs.Changed -= StateHasChanged;
        GC.SuppressFinalize(this);
    }

    protected override void OnInitialized() => Inputs.Changed += StateHasChanged;
}

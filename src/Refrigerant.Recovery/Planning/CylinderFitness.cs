using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>What, beside the filling rules, speaks against a cylinder in a job: the pressure that the refrigerant has at the place, or has at its critical point where it is no liquid when warm.</summary>
internal static class CylinderFitness
{
    /// <summary>Whether a cylinder is told to be warmer than any may be.</summary>
    public static bool IsHot(RecoveryCylinder cylinder) => cylinder.Temperature?.Kelvins > CylinderFindings.Hottest;

    /// <summary>The bound of 55 °C is held against the surroundings of the job too: our choice.</summary>
    public static IEnumerable<Finding> For(RecoveryJob job, RecoveryCylinder cylinder)
    {
        if (IsHot(cylinder) && cylinder.Temperature is Temperature told)
        {
            yield return new Finding(
                CylinderCodes.HotAtStart,
                Severity.Stop,
                Sources.CommonPractice,
                $"{FindingValue.Text("cylinder", cylinder.Label)} is at {FindingValue.Temperature("temperature", told, RoundingMode.Up)}: no cylinder is to be warmer than {FindingValue.Kelvins("limit", CylinderFindings.Hottest, RoundingMode.Down)}, and one that is nearly full bursts. Keep people away, bring it into the shade, cool it with water, and do not connect it until it is as cool as the air.");
        }

        Fluid fluid = job.Appliance.Fluid;
        double most = fluid.Model.Range.MaximumSaturationTemperature;
        bool liquidWhenWarm = most > FillFigures.LiquidFullTemperature;
        double kelvins = liquidWhenWarm ? Math.Min(most, job.Appliance.SurroundingsKelvin) : most;
        if (kelvins < fluid.Model.Range.MinimumTemperature)
        {
            yield break;
        }

        double gauge = fluid.Model.SaturationAtTemperature(kelvins).Bubble.Pressure - job.Barometer.Pressure.Pascals;
        double allowed = FillFigures.HighestGaugePressure(cylinder);
        if (gauge > allowed)
        {
            FindingValue at = FindingValue.Temperature("temperature", new Temperature(kelvins, TemperatureUnit.Kelvin));
            FindingValue service = FindingValue.GaugePressure("service pressure", cylinder.ServicePressure, RoundingMode.Down);
            FindingValue stands = FindingValue.GaugePressure("pressure", new Pressure(gauge, PressureUnit.Pascal), RoundingMode.Up);
            yield return new Finding(
                CylinderCodes.TooWeak,
                Severity.Stop,
                FillFigures.PressureAt55C.Source,
                liquidWhenWarm
                    ? $"{FindingValue.Text("refrigerant", fluid.Designation)} has {stands} at {at}, more than 5/4 of the service pressure of {FindingValue.Text("cylinder", cylinder.Label)} ({service}): do not use it for this job."
                    : (FormattableString)$"{FindingValue.Text("refrigerant", fluid.Designation)} has {stands} at {at} already, above which no liquid bounds its pressure, more than 5/4 of the service pressure of {FindingValue.Text("cylinder", cylinder.Label)} ({service}): do not use it for this job.");
        }
    }
}

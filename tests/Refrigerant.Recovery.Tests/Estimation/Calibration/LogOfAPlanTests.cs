using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Tests.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>A job that goes as planned gives a log that goes with the job; its numbers in another unit do not.</summary>
public class LogOfAPlanTests
{
    private const double Psi = 6894.757;

    [Fact]
    public void Vapor_that_blows_into_an_empty_cylinder_is_no_fault() => Assert.Empty(LogOf(Split(), 1).Check(Split()));

    /// <summary>Nor is the weight of it, where readings are so far apart that it comes between two of them; a weight that jumps later is.</summary>
    [Fact]
    public void Its_weight_is_no_jump()
    {
        Assert.Empty(LogOf(Split(), 1, 10).Check(Split()));
        JobReading[] moved = [.. LogOf(Split(), 1, 10).Readings.Select(reading => reading.Time.Minutes > 15 ? reading with { GrossWeight = reading.GrossWeight + Mass.FromKilograms(0.6) } : reading)];
        Assert.Contains(JobLog.FromReadings(moved).Check(Split()), finding => finding.Code == "log-weight-jumps");
    }

    /// <summary>Five minutes for the hoses to be moved after push-pull are no gap in the log.</summary>
    [Fact]
    public void A_change_of_hoses_is_no_gap()
    {
        RecoveryJob job = Jobs.Chiller(cylinders: 2);
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.Contains(plan.Stages, stage => stage.Kind == StageKind.HoseChange);
        Assert.DoesNotContain(LogOf(job, 1).Check(job), finding => finding.Severity > Severity.Note);
    }

    [Fact]
    public void Psi_read_as_kilopascals_do_not_fit() =>
        Assert.Contains(LogOf(Jobs.Chiller(cylinders: 2), 1000 / Psi).Check(Jobs.Chiller(cylinders: 2)), finding => finding.Code == "log-pressure-unit");

    private static RecoveryJob Split() => new()
    {
        Appliance = new Appliance { Fluid = Fluid.Get("R-410A"), Charge = Mass.FromKilograms(4), InternalVolume = Volume.FromLiters(6), Temperature = Temperature.FromDegreesCelsius(25) },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
        Hoses = Jobs.Hoses(5, 8),
        Cylinders = [Jobs.Cylinder(50)],
    };

    /// <summary>Every point of the plan's course at which something flows or stands, the gauge's numbers times a factor.</summary>
    private static JobLog LogOf(RecoveryJob job, double factor, double every = 1)
    {
        var readings = new List<JobReading>();
        double last = double.NegativeInfinity;
        foreach (PlanPoint at in RecoveryPlanner.Plan(job).Course())
        {
            if (at.Stage.Kind is StageKind.HoseChange or StageKind.CylinderChange || at.Time.Seconds < last + every)
            {
                continue;
            }

            last = at.Time.Seconds;
            bool draws = at.Stage.Kind is StageKind.VaporRecovery or StageKind.LiquidRecovery or StageKind.PushPull;
            TrajectoryPoint point = at.Point;
            readings.Add(new JobReading
            {
                Time = at.Time,
                SuctionGaugePressure = Pressure.FromPascals(factor * ((draws ? point.SuctionPressure : point.AppliancePressure).Pascals - 101_325)),
                GrossWeight = point.CylinderMass + job.Cylinders.Single(each => each.Label == at.Stage.Cylinder).TareWeight,
                MachineRunning = draws,
                Cylinder = at.Stage.Cylinder,
            });
        }

        return JobLog.FromReadings(readings);
    }
}

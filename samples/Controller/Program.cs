using System;
using System.Diagnostics;
using Refrigerant.Recovery.Samples.Controller;

// A control loop on the plain numbers of the property model, against a simulated machine. Three setups, each ending for its own reason.
foreach (Setup setup in Setup.All())
{
    var loop = new ControlLoop(setup);
    var watch = Stopwatch.StartNew();
    loop.Run();
    watch.Stop();

    Console.WriteLine(FormattableString.Invariant($"{setup.Fluid.Designation}, {setup.Charge:F1} kg ({setup.Charge / 0.45359237:F1} lb): {setup.Name}"));
    foreach (Readings now in loop.Log)
    {
        Console.WriteLine(FormattableString.Invariant(
            $"  {now.Seconds / 60,5:F1} min  appliance {now.AppliancePascals / 1e3,7:F1} kPa ({now.AppliancePascals / 6894.757,6:F1} psia)  discharge {now.DischargePascals / 1e3,7:F1} kPa  cylinder {now.CylinderKilograms,6:F2} kg"));
    }

    Console.WriteLine(FormattableString.Invariant(
        $"  ended: {loop.End} after {loop.Ticks} ticks of 100 ms; {loop.Allocated} bytes allocated; {watch.Elapsed.TotalMicroseconds / loop.Ticks:F0} µs of 100 000 µs a tick"));
    Console.WriteLine();
}

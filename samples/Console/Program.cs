using System;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Samples.Console;

// The typical calls, one file a topic, then two whole jobs. Everything here is an example to copy; the equipment and the places are invented.
System.Console.OutputEncoding = System.Text.Encoding.UTF8;

Properties.Show();
Gauges.Show();
CylinderLimits.Show();
WhatIsLeft.Show();
WhatTheLogTells.Show();

RecoveryPlan chiller = RecoveryPlanner.Plan(ChillerJob.Create());
PlanReport.Show("A water chiller in a cold plant room", chiller);
HowSure.Show(chiller.Job);

RecoveryJob rooftop = RooftopJob.Create();
PlanReport.Show("A rooftop unit with a zeotropic blend, on a hot roof at 1600 m", RecoveryPlanner.Plan(rooftop));
WhatIsFaster.Show(rooftop);

string folder = args.Length > 0 ? args[0] : Environment.CurrentDirectory;
Chart.Write(chiller, folder);

using System;
using Refrigerant.Recovery.Fluids;
using UnitsNet;

Fluid fluid = Fluid.Get(args.Length > 0 ? args[0] : "R-134a");
Console.WriteLine($"{fluid} saturated at 25 °C: {fluid.SaturationAt(Temperature.FromDegreesCelsius(25))}");

using Microsoft.AspNetCore.Builder;
using Refrigerant.Recovery.Samples.Web;

// A job in, a plan out: curl -d @samples/Desk/job.json http://127.0.0.1:5080/plans
WebApplication app = PlanService.Build(args);
app.Run();

"""What hands hold: shapes, tension, torque and reach."""
